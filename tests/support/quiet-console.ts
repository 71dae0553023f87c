import { afterEach, beforeEach, expect } from 'vitest';

/**
 * Unexpected console output fails the test that caused it.
 * A test that expects output replaces the method itself (`vi.spyOn(console, 'warn').mockImplementation(...)`),
 * which hides it from this guard. `console.info` stays free: property and bench suites report their counts with it.
 */
const guarded = ['log', 'warn', 'error', 'debug', 'trace'] as const;
type Guarded = (typeof guarded)[number];

const originals = new Map<Guarded, (...data: unknown[]) => void>(guarded.map((name) => [name, console[name]]));
let heard: string[] = [];

beforeEach(() => {
  heard = [];
  for (const name of guarded) {
    console[name] = (...data: unknown[]) => {
      heard.push(`console.${name}: ${data.map(String).join(' ')}`);
      originals.get(name)?.(...data);
    };
  }
});

afterEach(() => {
  for (const [name, original] of originals) console[name] = original;
  expect(heard, 'a test printed something that it did not announce').toEqual([]);
});
