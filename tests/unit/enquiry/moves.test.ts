import { describe, expect, it } from 'vitest';
import { decideMove, stateToday } from '#lib/enquiry/decide-move.ts';
import { mayChangeNote, NOTE_CHANGE_MINUTES } from '#lib/enquiry/decide-note.ts';
import { ENQUIRY_STATES, enquiryStateNamed, MOVERS, movesFrom } from '#lib/enquiry/moves.ts';

const table = (by: (typeof MOVERS)[number]) =>
  ENQUIRY_STATES.map((from) => `${from}: ${movesFrom({ from, by }).join(', ')}`);

describe('the life of an enquiry', () => {
  it('takes by hand only the steps that no quote and no booking has to take', () => {
    expect(table('by hand')).toEqual([
      'new: being worked, declined',
      'being worked: new, declined',
      'quoted: being worked, declined, lapsed',
      'accepted: ',
      'declined: being worked',
      'lapsed: being worked, declined',
    ]);
  });

  it('reaches every state from new', () => {
    const seen = new Set(['new']);
    for (let round = 0; round < ENQUIRY_STATES.length; round += 1)
      for (const from of ENQUIRY_STATES.filter((state) => seen.has(state)))
        for (const by of MOVERS) for (const to of movesFrom({ from, by })) seen.add(to);
    expect([...seen].sort()).toEqual([...ENQUIRY_STATES].sort());
  });

  it('is left accepted by nothing but a cancelled booking', () => {
    const out = MOVERS.filter((by) => movesFrom({ from: 'accepted', by }).some((to) => to !== 'accepted'));
    expect(out).toEqual(['booking cancelled']);
  });

  it('says what to do instead of a step that is not allowed', () => {
    expect(decideMove({ from: 'new', to: 'quoted', by: 'by hand' })).toEqual({
      ok: false,
      reason: {
        code: 'move-not-allowed',
        sentence:
          'An enquiry that is new cannot be made quoted here. Issue a quote under Price & papers: that makes it quoted.',
      },
    });
    expect(decideMove({ from: 'accepted', to: 'declined', by: 'by hand' })).toMatchObject({
      reason: { sentence: 'An enquiry that is accepted cannot be made declined here. Cancel its booking first.' },
    });
    expect(decideMove({ from: 'declined', to: 'declined', by: 'by hand' })).toMatchObject({
      reason: { code: 'state-already' },
    });
    expect(decideMove({ from: 'new', to: 'declined', by: 'by hand' })).toEqual({ ok: true, value: 'declined' });
  });

  it('lapses the day after the last day of its quote, and only when it is quoted', () => {
    const day = { validUntil: '2026-03-20', state: 'quoted' } as const;
    expect(stateToday({ ...day, today: '2026-03-20' })).toBe('quoted');
    expect(stateToday({ ...day, today: '2026-03-21' })).toBe('lapsed');
    expect(stateToday({ ...day, state: 'accepted', today: '2026-03-21' })).toBe('accepted');
    expect(stateToday({ ...day, validUntil: null, today: '2026-03-21' })).toBe('quoted');
  });

  it('reads a state that it does not know as new', () => {
    expect([enquiryStateNamed('lapsed'), enquiryStateNamed('else')]).toEqual(['lapsed', 'new']);
  });
});

describe('a note', () => {
  const note = { authorId: 'a', askerId: 'a', writtenAt: '2026-03-02T08:00:00.000Z', isStruck: false };
  const minutes = (count: number) => new Date(Date.parse(note.writtenAt) + count * 60_000);

  it('is changed by its author for some minutes', () => {
    expect(mayChangeNote({ ...note, now: minutes(NOTE_CHANGE_MINUTES) })).toEqual({ ok: true, value: true });
  });

  it.each([
    ['note-too-old', { now: minutes(NOTE_CHANGE_MINUTES + 1) }],
    ['note-of-another', { now: minutes(1), askerId: 'b' }],
    ['note-struck', { now: minutes(1), isStruck: true }],
  ])('is refused with %s', (code, more) => {
    expect(mayChangeNote({ ...note, ...more })).toMatchObject({ ok: false, reason: { code } });
  });
});
