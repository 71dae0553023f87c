import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { FactsOf, Scope } from '#lib/rules/facts.ts';
import { findingOf, type RuleOf } from '#lib/rules/rule.ts';
import { GERMAN_TABLES } from '#lib/wording/german/all-sentences.ts';
import { tellerFor } from '#lib/wording/told-in.ts';
import { sourceTexts } from '#tests/support/papers/text-templates.ts';

const numbersIn = (text: string): readonly string[] =>
  (text.match(/\d+(?:[.,]\d+)*/g) ?? []).toSorted((a, b) => a.localeCompare(b));
const STOP_WORDS = /\b(the|and|with|must|which|from|without|before|your|this)\b/i;

interface SaidByRule {
  readonly id: string;
  readonly sentence: string;
  readonly names: readonly string[];
}

function said<S extends Scope>(rules: readonly RuleOf<S>[]): readonly SaidByRule[] {
  return rules.flatMap((rule) =>
    rule
      .examples()
      .filter(({ speaks }) => speaks)
      .map(({ facts }) => ({ id: rule.id, sentence: findingOf(rule, facts).sentence, names: namesIn(facts) })),
  );
}

/** Tags, names of parts and rules of the house that the example holds. */
function namesIn(facts: FactsOf[Scope]): readonly string[] {
  const names: string[] = [];
  const dig = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      if (typeof inner === 'string' && ['tag', 'name', 'number', 'sentence'].includes(key)) names.push(inner);
      dig(inner);
    }
  };
  dig(facts);
  return names;
}

const ALL = [
  said(RULES_OF.line),
  said(RULES_OF.part),
  said(RULES_OF.link),
  said(RULES_OF.case),
  said(RULES_OF.pair),
  said(RULES_OF.core),
  said(RULES_OF.grip),
  said(RULES_OF.reaction),
  said(RULES_OF.whole),
].flat();

/** Samples are named in small letters, equipment is not. */
const capital = (text: string): string => text.replace(/\bsample (?=\w)/g, 'Sample ');

function inGerman({ sentence, names }: SaidByRule) {
  const named = names.map(capital);
  const own = new Map(named.map((name) => [name, name]));
  return tellerFor({ language: 'de', names: named, own }).told(capital(sentence));
}

describe('sentences of rules in German', () => {
  it('tells the example of every rule, each whole', () => {
    expect(ALL.length).toBeGreaterThan(150);
    expect(ALL.filter((one) => inGerman(one).language !== 'de').map(({ sentence }) => sentence)).toEqual([]);
  });

  it('says every number of the English sentence, and no other', () => {
    const differing = ALL.map((one) => ({ one, text: inGerman(one).text }))
      .filter(({ one, text }) => String(numbersIn(text)) !== String(numbersIn(one.sentence)))
      .map(({ one, text }) => ({ english: one.sentence, german: text }));
    expect(differing).toEqual([]);
  });

  it('says every unit and every tag of the English sentence, and no other', () => {
    const marks = (text: string): string =>
      String((text.match(/N·m|\b(?:mm|kN|bar|kg|Wh|min|V-1)\b|m\/s²|l\/s|dB\(A\)|1\/min|°C|°|%/g) ?? []).toSorted());
    const differing = ALL.map((one) => ({ english: one.sentence, german: inGerman(one).text })).filter(
      ({ english, german }) => marks(english) !== marks(german),
    );
    expect(differing).toEqual([]);
  });

  it('holds no English between the names', () => {
    const left = ALL.map((one) =>
      one.names
        .toSorted((a, b) => b.length - a.length)
        .reduce((text, name) => text.replaceAll(capital(name), ''), inGerman(one).text.replace(/„[^“]*“/g, '')),
    );
    expect(left.filter((text) => STOP_WORDS.test(text))).toEqual([]);
  });
});

/** Where sentences stand in the source, and under which names. */
const SOURCES = [
  { folder: 'lib/rules', files: /^(?!sample-)/, properties: ['sentence'] },
  { folder: 'lib/duty', files: /./, properties: ['sentence'] },
  { folder: 'lib/kits', files: /^(?!explain-part)/, properties: ['sentence', 'clause'] },
  { folder: 'lib/pricing', files: /^(?!discount-approval|return-decisions)/, properties: ['sentence', 'sentences'] },
  { folder: 'lib/planning', files: /^day-findings/, properties: ['sentence'] },
  {
    folder: 'lib/documents/papers',
    files: /^(quote|site|crew|return-paper|paper-head|line-classes)/,
    properties: ['*'],
  },
  {
    folder: 'lib/documents/words',
    files: /^(safety|restraint|assumptions|crew-day|measure|line-warn)/,
    properties: ['*'],
  },
  {
    folder: 'lib/documents/drawings',
    files: /^(drive-line|ladder|torque-ladder)/,
    properties: ['title', 'detail', 'words', 'anchorWords'],
  },
  { folder: 'lib/services/quotes', files: /^(papers-of|price-outcome|quote-currency)/, properties: ['*'] },
  { folder: 'lib/intake', files: /^(?!columns|template)/, properties: ['sentence', 'remedy', 'reason'] },
] as const;

/** Sentences whose gaps hold words that change them: told by narrower wordings, which the examples above and the papers try. */
const IN_PARTS: readonly string[] = [
  '7: the wheel 7 with its stem7; 7 7 does not follow.',
  '7: there is nothing that an adapter can grip7; the Desk looks at it.',
  '77 at the cheapest mix of rates, 7: 7 each, times 7.7',
  '7: 7 came back unused and 7 credited at 7 % of 7 each.',
  'It can be served with compressed air of 7 at the valve7.',
  'Stem thread 7 has 7 start7, the column says 7; both are shown and the turns are not sure.',
  // To the Desk alone.
  'Lines of this price were typed in 7, and the house keeps no exchange rate between 7 and 7: put one on under House.',
  '▲ 7 is below what the valve may need to start: it may not move at the torque allowed. Agree with the owner before the work; do not go higher.',
  'Sample house rule: 7 7.',
];

describe('sentences in the source', () => {
  const teller = tellerFor({ language: 'de' });
  const texts = SOURCES.flatMap(({ folder, files, properties }) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && files.test(path.basename(name)))
      .flatMap((name) => sourceTexts(path.join(folder, name), new Set<string>(properties))),
  );

  it('have a German wording, every one that stands whole', () => {
    const whole = texts
      .map(({ text }) => text)
      .filter((text) => /^[\p{Lu}\d▲“].*[.?!]7?$/su.test(text) && text.includes(' '));
    expect(whole.length).toBeGreaterThan(250);
    const without = whole.filter((text) => teller.told(text).language !== 'de');
    expect([...new Set(without)].toSorted((a, b) => a.localeCompare(b))).toEqual(
      IN_PARTS.toSorted((a, b) => a.localeCompare(b)),
    );
  });
});

describe('telling in a language', () => {
  const teller = tellerFor({
    language: 'de',
    names: ['the old one', 'open', 'V-1'],
    own: new Map([['Peg plate', 'Bolzenplatte']]),
  });

  it('keeps a sentence whole in English where one word has no wording', () => {
    expect(teller.told('V-1 faces sideways; Peg plate W-103 would come off.')).toEqual({
      text: 'V-1 faces sideways; Peg plate W-103 would come off.',
      language: 'en',
    });
    expect(teller.told('V-1 faces side; Peg plate W-103 would come off.')).toEqual({
      text: 'V-1 zeigt zur Seite; Bolzenplatte W-103 fiele ab.',
      language: 'de',
    });
  });

  it('keeps what somebody wrote, also where it is a word of the trade', () => {
    expect(teller.tell('open')).toBe('open');
    expect(teller.tell('the old one: count turns from the closed end and write them down each way.')).toBe(
      'the old one: Umdrehungen von der geschlossenen Stellung aus zählen und für beide Richtungen aufschreiben.',
    );
  });

  it('tells sentences that were joined one by one, those without a wording in English', () => {
    expect(teller.tell('Ask the Desk. Nobody wrote this one down. Count the turns of a full stroke.')).toBe(
      'Bitte das Haus fragen. Nobody wrote this one down. Die Umdrehungen eines ganzen Hubs zählen.',
    );
  });

  it('tells a sentence of one line and of a class alike', () => {
    expect(teller.tell('The reach of up to 900 mm is a guess; measure it.')).toBe(
      'Die Reichweite bis 900 mm ist geschätzt; bitte messen.',
    );
  });

  it('tells sentences in brackets within a sentence', () => {
    expect(
      teller.told(
        'V-1: there is nothing that an adapter can grip (Count the turns of a full stroke. Ask the Desk.); the Desk looks at it.',
      ).language,
    ).toBe('de');
  });

  it('gives back English as it is', () => {
    expect(tellerFor({ language: 'en' }).told('Ask the Desk.')).toEqual({ text: 'Ask the Desk.', language: 'en' });
  });
});

describe('the German wordings', () => {
  const entries = GERMAN_TABLES.flatMap((table) => Object.entries(table));

  it('word no English text twice', () => {
    const keys = entries.map(([english]) => english);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('fill the same gaps and name the same numbers as the English text', () => {
    const gaps = (text: string) =>
      [...new Set(text.replaceAll('!}', '}').match(/\{\d\}/g) ?? [])].toSorted((a, b) => a.localeCompare(b)).join('');
    const plain = (text: string) => String(numbersIn(text.replace(/\{\d!?\}/g, '')));
    const wrong = entries.filter(
      ([english, german]) => gaps(english) !== gaps(german) || plain(english) !== plain(german),
    );
    expect(wrong).toEqual([]);
  });
});
