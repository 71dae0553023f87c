/*
 * What is different in a quote from the revision before it, in words: dates and site, valves, equipment, price lines, totals, assumptions, terms.
 * Invariant: two equal quotes have no changes; the words name what was and what is now.
 * Not here: choosing which two are compared (lib/services/quotes/revision-changes.ts).
 * Read next: ../papers/quote-paper.ts.
 */

import { nominalSize, rangeText } from '#lib/documents/papers/line-classes.ts';
import type { PaperLine } from '#lib/documents/papers/paper-inputs.ts';
import type { QuoteOptionInput } from '#lib/documents/papers/quote-option-input.ts';
import { gatherAssumptions } from './assumptions.ts';
import { dateText, listText, moneyText, tagsText, windowText } from './print-values.ts';

export interface ChangeGroup {
  readonly about: string;
  readonly sentences: readonly string[];
}

export interface QuoteChanges {
  /** Number and revision of the quote before. */
  readonly since: string;
  readonly groups: readonly ChangeGroup[];
}

/** One revision as far as changes are told. */
export interface ComparedQuote {
  readonly validUntil: string;
  readonly options: readonly QuoteOptionInput[];
  readonly terms: readonly string[];
}

export interface Revisions {
  readonly before: ComparedQuote;
  readonly after: ComparedQuote;
}

export function quoteChanges({ before, after }: Revisions): readonly ChangeGroup[] {
  const pairs = pairOptions({ before, after });
  const several = before.options.length > 1 || after.options.length > 1;
  const [first] = pairs.both;
  const groups: readonly ChangeGroup[] = [
    { about: 'Options', sentences: pairs.told },
    ...pairs.both.flatMap(({ was, now }) =>
      optionChanges(was, now).map((group) => ({
        ...group,
        about: several ? `${now.name ?? 'As asked'}: ${group.about.toLowerCase()}` : group.about,
      })),
    ),
    { about: 'Valves', sentences: first === undefined ? [] : valveChanges(first.was, first.now) },
    { about: 'Assumptions', sentences: first === undefined ? [] : assumptionChanges(first.was, first.now) },
    { about: 'Terms', sentences: termChanges({ before, after }) },
  ];
  return groups.filter(({ sentences }) => sentences.length > 0);
}

interface Pair {
  readonly was: QuoteOptionInput;
  readonly now: QuoteOptionInput;
}

/** The first options belong together; further ones by their name. */
function pairOptions({ before, after }: Revisions): {
  readonly both: readonly Pair[];
  readonly told: readonly string[];
} {
  const nameOf = (option: QuoteOptionInput, index: number) => (index === 0 ? '' : (option.name ?? ''));
  const both = after.options.flatMap((now, index): readonly Pair[] => {
    const was = before.options.find((one, at) => nameOf(one, at) === nameOf(now, index));
    return was === undefined ? [] : [{ was, now }];
  });
  const added = after.options.filter((now) => !both.some((pair) => pair.now === now));
  const gone = before.options.filter((was) => !both.some((pair) => pair.was === was));
  return {
    both,
    told: [
      ...added.map(({ name, price }) => `“${name}” is offered too, at ${totalText(price)}.`),
      ...gone.map(({ name }) => `“${name}” is offered no longer.`),
    ],
  };
}

function optionChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly ChangeGroup[] {
  return [
    { about: 'Dates and site', sentences: siteChanges(was, now) },
    { about: 'Equipment', sentences: kitChanges(was, now) },
    { about: 'Price', sentences: priceChanges(was, now) },
  ];
}

function siteChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly string[] {
  const [before, after] = [was.context.site, now.context.site];
  return [
    ...differ('Dates', windowText(before.window), windowText(after.window)),
    ...differ('Place', before.name, after.name),
    ...differ('Crews', String(before.crews), String(after.crews)),
    ...differ('Persons in a crew', String(before.personsPerCrew), String(after.personsPerCrew)),
    ...differ('Hours of a shift', String(before.shiftHours), String(after.shiftHours)),
    ...differ('Who operates', operator(before.operated), operator(after.operated)),
    ...listed({ was: before.facts, now: after.facts, added: 'Now', gone: 'No longer' }),
  ];
}

function operator(operated: boolean): string {
  return operated ? 'our people' : 'your people';
}

/** Pieces of all crews together, by number. */
function kitChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly string[] {
  const [before, after] = [countsOf(was), countsOf(now)];
  const name = (number: string) =>
    [...now.context.models, ...was.context.models].find((model) => model.number === number)?.name ?? number;
  return unionOf([...before.keys()], [...after.keys()]).flatMap((number) => {
    const [had, has] = [before.get(number) ?? 0, after.get(number) ?? 0];
    if (had === has) return [];
    const what = `${name(number)} (${number})`;
    if (had === 0) return [`Added: ${has} × ${what}.`];
    if (has === 0) return [`Gone: ${had} × ${what}.`];
    return [`${what}: ${has} in place of ${had}.`];
  });
}

function countsOf({ kits }: QuoteOptionInput): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { number, count } of kits.flatMap(({ items }) => items))
    counts.set(number, (counts.get(number) ?? 0) + count);
  return counts;
}

/** Lines of equal name are compared in their order. */
function priceChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly string[] {
  const [before, after] = [pricedOf(was), pricedOf(now)];
  const money = (minor: number) => moneyText(minor, now.price.currency);
  const lines = unionOf([...before.keys()], [...after.keys()]).flatMap((label) => {
    const [had, has] = [before.get(label), after.get(label)];
    if (had === undefined) return [`Added: ${label}, ${money(has ?? 0)}.`];
    if (has === undefined) return [`Gone: ${label}, which was ${money(had)}.`];
    return had === has ? [] : [`${label}: ${money(has)} in place of ${money(had)}.`];
  });
  return [
    ...lines,
    ...differ('Days priced', String(was.price.days), String(now.price.days)),
    ...differ('Total to pay', totalText(was.price), totalText(now.price)),
    ...differ('Deposit', money(was.price.deposit_minor ?? 0), money(now.price.deposit_minor ?? 0)),
  ];
}

function pricedOf({ price }: QuoteOptionInput): ReadonlyMap<string, number> {
  const seen = new Map<string, number>();
  for (const { label, amount_minor } of price.lines) {
    let name = label;
    for (let copy = 2; seen.has(name); copy += 1) name = `${label} (${copy})`;
    seen.set(name, amount_minor);
  }
  return seen;
}

function totalText({ currency, total_minor }: QuoteOptionInput['price']): string {
  return `${currency} ${moneyText(total_minor, currency)}`;
}

const TAGS_TOLD = 12;

function valveChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly string[] {
  const [before, after] = [linesOf(was), linesOf(now)];
  const added = [...after.keys()].filter((tag) => !before.has(tag));
  const gone = [...before.keys()].filter((tag) => !after.has(tag));
  const other = [...after].flatMap(([tag, line]) => {
    const had = before.get(tag);
    const told = had === undefined ? [] : lineChanges(had, line);
    return told.length === 0 ? [] : [`${tag}: ${listText(told)}.`];
  });
  return [
    ...(added.length === 0 ? [] : [`Added: ${tagsText(added, TAGS_TOLD)}.`]),
    ...(gone.length === 0 ? [] : [`Gone: ${tagsText(gone, TAGS_TOLD)}.`]),
    ...other.slice(0, TAGS_TOLD),
    ...(other.length > TAGS_TOLD ? [`And ${other.length - TAGS_TOLD} more lines changed.`] : []),
  ];
}

interface ToldLine {
  readonly qty: number;
  readonly strokes: number;
  readonly type: string;
  readonly size: string;
  readonly start: string;
  readonly served: string;
}

/** A line once, with all its parts together. */
function linesOf({ lines, context }: QuoteOptionInput): ReadonlyMap<string, ToldLine> {
  const told = new Map<string, ToldLine>();
  for (const part of lines) {
    const before = told.get(part.line.tag);
    told.set(part.line.tag, {
      ...tell(part, context.system === 'us' ? 'us' : 'si'),
      qty: (before?.qty ?? 0) + part.line.qty,
    });
  }
  return told;
}

function tell({ line, duty, assembly }: PaperLine, system: 'si' | 'us'): ToldLine {
  const worse = duty.opening.starting.high >= duty.closing.starting.high ? duty.opening : duty.closing;
  return {
    qty: line.qty,
    strokes: line.strokes,
    type: line.valveType?.value ?? 'unknown',
    size: line.size === undefined ? 'unknown' : nominalSize(line.size.nominal),
    start: rangeText(worse.starting, system),
    served: assembly === null ? 'not served' : 'served',
  };
}

function lineChanges(had: ToldLine, has: ToldLine): readonly string[] {
  const words = [
    ['valves', String(had.qty), String(has.qty)],
    ['strokes', String(had.strokes), String(has.strokes)],
    ['type', had.type, has.type],
    ['size', had.size, has.size],
    ['torque to start', had.start, has.start],
    ['it', had.served, has.served],
  ] as const;
  return words.flatMap(([what, was, is]) => {
    if (was === is) return [];
    return [what === 'it' ? `now ${is}` : `${what} ${is} in place of ${was}`];
  });
}

function assumptionChanges(was: QuoteOptionInput, now: QuoteOptionInput): readonly string[] {
  const told = ({ lines, context }: QuoteOptionInput) =>
    gatherAssumptions(lines, context.system).map(({ what, taken, tags }) => `${what}, ${taken} (${tagsText(tags, 4)})`);
  return listed({ was: told(was), now: told(now), added: 'Assumed now', gone: 'No longer assumed' });
}

function termChanges({ before, after }: Revisions): readonly string[] {
  return [
    ...differ('Valid until', dateText(before.validUntil), dateText(after.validUntil)),
    ...listed({ was: before.terms, now: after.terms, added: 'Now', gone: 'No longer' }),
  ];
}

/** `Crews: 2 in place of 1.`, or nothing where both are the same. */
function differ(...[what, was, now]: readonly [what: string, was: string, now: string]): readonly string[] {
  return was === now ? [] : [`${what}: ${now} in place of ${was}.`];
}

function listed(at: {
  readonly was: readonly string[];
  readonly now: readonly string[];
  readonly added: string;
  readonly gone: string;
}): readonly string[] {
  const tell = (word: string, sentence: string) => `${word}: ${sentence.replace(/\.$/, '')}.`;
  return [
    ...at.now.filter((one) => !at.was.includes(one)).map((one) => tell(at.added, one)),
    ...at.was.filter((one) => !at.now.includes(one)).map((one) => tell(at.gone, one)),
  ];
}

function unionOf(first: readonly string[], second: readonly string[]): readonly string[] {
  return [...new Set([...first, ...second])];
}
