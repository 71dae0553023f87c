import { describe, expect, it } from 'vitest';
import { parseSite } from '#lib/contracts/site.ts';
import { HAND_OVER_CODES } from '#lib/questions/hand-over.ts';
import { readTold } from '#lib/questions/line-outcome.ts';
import { QUESTIONS } from '#lib/questions/question-table.ts';
import { amountIn, dayIn, durationIn, hourOf } from '#lib/wording/forms.ts';
import { LANGUAGES, languageAccepted, languageNamed } from '#lib/wording/language.ts';
import { choiceWords, reasonWords, refusalWords } from '#lib/wording/reason-words.ts';
import { keyOf, say, TEXTS } from '#lib/wording/wording.ts';

const placeholders = (text: string): readonly string[] => (text.match(/\{[^}]*\}/g) ?? []).toSorted();

describe('texts of self-service', () => {
  it('are there in every language under the same keys, none empty, with the same placeholders', () => {
    const keys = Object.keys(TEXTS.en).toSorted();
    expect(keys.length).toBeGreaterThan(250);
    for (const language of LANGUAGES) {
      expect(Object.keys(TEXTS[language]).toSorted()).toEqual(keys);
      for (const [key, text] of Object.entries(TEXTS[language])) {
        expect(text.trim(), key).not.toBe('');
        const english = Object.entries(TEXTS.en).find(([name]) => name === key)?.[1] ?? '';
        expect(placeholders(text), `${language} ${key}`).toEqual(placeholders(english));
      }
    }
  });

  it('are translated: the same words in both languages stand nearly nowhere', () => {
    const same = Object.entries(TEXTS.en).filter(([key, text]) =>
      Object.entries(TEXTS.de).some(([k, t]) => k === key && t === text),
    );
    expect(same.map(([key]) => key)).toEqual(
      ['choice.hydrant', 'choice.asphalt'].filter((key) => same.some(([k]) => k === key)),
    );
  });

  it('hold no exclamation mark and no placeholder that is left open', () => {
    for (const language of LANGUAGES)
      expect(Object.values(TEXTS[language]).filter((text) => text.includes('!'))).toEqual([]);
    expect(() => say('en', 'valve.title')).toThrow(/tag/);
    expect(say('de', 'valve.title', { tag: 'V7' })).toBe('Armatur V7');
  });

  it('know every question, every choice and every reason', () => {
    const site = parseSite({}, { startsOn: '2030-06-03' });
    if (!site.ok) throw new Error(site.reason.sentence);
    for (const { column, answered, answers } of QUESTIONS) {
      for (const part of ['ask', 'how', 'unknown', 'name'])
        expect(keyOf(part, column), `${part}.${column}`).toBeDefined();
      if (answered === 'by number') continue;
      for (const { text } of answers(readTold({ tag: 'V1' }, site.value)))
        expect(choiceWords('de', { column, text }), `${column} ${text}`).not.toBe(text);
    }
    for (const code of HAND_OVER_CODES) expect(keyOf('reason', code), code).toBeDefined();
  });

  it('tell a reason with what it names, and an unknown refusal in general', () => {
    expect(reasonWords('de', { code: 'service', facts: { service: 'oxygen' } })).toContain('Sauerstoff');
    expect(reasonWords('en', { code: 'zone', facts: { zone: '1' } })).toContain('zone 1');
    expect(refusalWords('en', 'no-such-code')).toBe(TEXTS.en['refused.other']);
    expect(refusalWords('en', 'file-is-picture')).toBe(TEXTS.en['refused.file-unreadable']);
    expect(refusalWords('de', 'file-too-large')).toBe(TEXTS.de['refused.file-too-large']);
    expect(choiceWords('en', { column: 'anchor', text: 'none' })).toBe('Nothing');
    expect(choiceWords('en', { column: 'wheel_spokes', text: '2' })).toBe('2');
  });
});

describe('the language of a reader', () => {
  it.each([
    ['de-AT,de;q=0.9,en;q=0.5', 'de'],
    ['fr,en;q=0.3,de;q=0.8', 'de'],
    ['fr', 'en'],
    ['', 'en'],
    ['de;q=0, en', 'en'],
    ['*', 'en'],
  ])('for %j is %s', (header, language) => {
    expect(languageAccepted(header)).toBe(language);
  });

  it('is one that there is, or none', () => {
    expect(languageNamed('de')).toBe('de');
    expect(languageNamed('xx')).toBeUndefined();
  });

  it('gives days, amounts and durations their form', () => {
    expect(dayIn('de', '2026-03-02')).toBe('02.03.2026');
    expect(dayIn('en', '2026-03-02')).toBe('2 Mar 2026');
    expect(hourOf('2026-03-02T12:30:00.000Z')).toBe('12:30');
    expect(amountIn('de', { amount_minor: -1234567, currency: 'EUR' })).toBe('−12\u202f345,67');
    expect(amountIn('en', { amount_minor: 900, currency: 'JPY' })).toBe('900');
    expect([durationIn(45), durationIn(720), durationIn(12_000)]).toEqual(['45 s', '12 min', '3 h 20 min']);
  });
});
