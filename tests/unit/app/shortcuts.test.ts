import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { matchShortcut, SHORTCUTS } from '#app/_frame/shortcuts.ts';

describe('the keys of the house', () => {
  it('are single keys without Ctrl, Alt or Meta, which belong to browser and screen reader', () => {
    for (const { keys, label } of SHORTCUTS) {
      expect(keys.length, label).toBeGreaterThan(0);
      for (const key of keys) expect(key, label).toMatch(/^[a-z0-9?/]$/);
    }
  });

  it('none is the beginning of another, so that none waits for nothing', () => {
    const sequences = SHORTCUTS.map(({ keys }) => keys.join(' '));
    expect(new Set(sequences).size).toBe(sequences.length);
    for (const one of sequences)
      for (const other of sequences)
        if (one !== other) expect(other.startsWith(`${one} `), `${one} begins ${other}`).toBe(false);
  });

  it('are matched whole, as begun, or not at all', () => {
    expect(matchShortcut(['g', 'h'])).toMatchObject({ kind: 'found', shortcut: { label: 'Home' } });
    expect(matchShortcut(['g'])).toEqual({ kind: 'begun' });
    expect(matchShortcut(['x'])).toEqual({ kind: 'none' });
    expect(matchShortcut(['g', 'x'])).toEqual({ kind: 'none' });
    expect(matchShortcut([])).toEqual({ kind: 'none' });
  });

  it('lead to screens that are there', () => {
    const places = SHORTCUTS.flatMap(({ deed }) => (deed.kind === 'go' ? [deed.href] : []));
    expect(places.length).toBeGreaterThan(4);
    const stands = (href: string) =>
      ['(desk)', '(yard)'].some((group) => existsSync(`app/${group}${href === '/' ? '' : href}/page.tsx`));
    for (const href of places) expect(stands(href), href).toBe(true);
  });
});
