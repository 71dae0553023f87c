/*
 * What a change of rules or equipment does to lines that are still open: who is no longer served, who is now, whose kit differs.
 * Invariant: the same search answers with and without the change, over the same lines; equal lines are told once.
 * Not here: stock, crews and days, which no rule changes; where the lines come from (lib/services/house/try-change.ts).
 * Read next: ../kits/find-choices.ts, ../workers/compare-worker.ts.
 */
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Alternative, LineClass } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { type Choices, findChoices, type LineDuty } from '#lib/kits/find-choices.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import type { KitConstraints } from '#lib/kits/wishes.ts';
import type { Told } from '#lib/units/say-figure.ts';
import { pairDuties } from './pose-problem.ts';

interface World {
  readonly site: Site;
  readonly models: readonly Model[];
}

export interface ChangeCase {
  readonly enquiryId: number;
  readonly lines: readonly ScheduleLine[];
  readonly constraints: KitConstraints;
  readonly before: World;
  readonly after: World;
}

export interface ChangedClass {
  readonly kind: 'no longer served' | 'now served' | 'another kit' | 'fewer ways' | 'more ways';
  readonly tags: readonly string[];
  /** Numbers of the cheapest kit by day rates; empty where nothing serves. */
  readonly before: readonly string[];
  readonly after: readonly string[];
  readonly why: readonly Told[];
}

export interface ChangedEnquiry {
  readonly enquiryId: number;
  readonly lines: number;
  /** Lines for which all stays as it is. */
  readonly same: number;
  readonly classes: readonly ChangedClass[];
}

const REASONS_TOLD = 3;
const PARTS_EXPLAINED = 2;

export function compareChange(one: ChangeCase): ChangedEnquiry {
  const duties = assessDuties({ lines: one.lines, site: one.before.site });
  const lines = pairDuties(one.lines, duties);
  const asked = { lines, constraints: one.constraints };
  const before = findChoices({ ...asked, ...one.before });
  const after = findChoices({ ...asked, ...one.after });
  const groups = groupTags(lines, { before, after });
  const classes = groups.flatMap((tags) => judge({ one, lines, before, after, tags }) ?? []);
  const changed = classes.reduce((sum, { tags }) => sum + tags.length, 0);
  return { enquiryId: one.enquiryId, lines: lines.length, same: lines.length - changed, classes };
}

interface Both {
  readonly before: Choices;
  readonly after: Choices;
}

/** Tags that were one class before and are one class after. */
function groupTags(lines: readonly LineDuty[], { before, after }: Both): readonly (readonly string[])[] {
  const keys = [before, after].map(classOfTag);
  const groups = new Map<string, string[]>();
  for (const { line } of lines) {
    const key = keys.map((of) => of.get(line.tag) ?? '').join(' / ');
    groups.set(key, [...(groups.get(key) ?? []), line.tag]);
  }
  return [...groups.values()];
}

function classOfTag({ classes, unserved }: Choices): ReadonlyMap<string, string> {
  return new Map([
    ...classes.flatMap(({ id, tags }) => tags.map((tag) => [tag, id] as const)),
    ...unserved.map(({ tag, classId }) => [tag, `none ${classId}`] as const),
  ]);
}

interface Judging extends Both {
  readonly one: ChangeCase;
  readonly lines: readonly LineDuty[];
  readonly tags: readonly string[];
}

function judge({ one, lines, before, after, tags }: Judging): ChangedClass | null {
  const [tag = ''] = tags;
  const old = servingOf(before, { tag, models: one.before.models });
  const now = servingOf(after, { tag, models: one.after.models });
  const shape = { tags, before: old?.kit ?? [], after: now?.kit ?? [] };
  if (old !== null && now === null) return { ...shape, kind: 'no longer served', why: reasonsFor(after, tag) };
  if (old === null && now !== null) return { ...shape, kind: 'now served', why: reasonsFor(before, tag) };
  if (old === null || now === null) return null;
  if (old.kit.join() !== now.kit.join()) {
    const gone = old.kit.filter((number) => !now.kit.includes(number));
    const lineDuty = lines.find(({ line }) => line.tag === tag);
    return { ...shape, kind: 'another kit', why: lineDuty === undefined ? [] : whyGone(one, { lineDuty, gone }) };
  }
  if (old.ways === now.ways) return null;
  const kind = now.ways < old.ways ? 'fewer ways' : 'more ways';
  return {
    ...shape,
    kind,
    why: [{ sentence: `The same kit; ${now.ways} assemblies would serve it, before the change ${old.ways}.` }],
  };
}

function reasonsFor({ unserved }: Choices, tag: string): readonly Told[] {
  return (unserved.find((one) => one.tag === tag)?.because ?? []).slice(0, REASONS_TOLD);
}

function whyGone(
  one: ChangeCase,
  { lineDuty, gone }: { readonly lineDuty: LineDuty; readonly gone: readonly string[] },
): readonly Told[] {
  return gone.slice(0, PARTS_EXPLAINED).flatMap((part): readonly Told[] => {
    const answer = explainPart({ lineDuty, ...one.after, part });
    if (!answer.fits) return answer.because.slice(0, REASONS_TOLD);
    return [{ sentence: `${part} still serves it, and another kit now costs less by the day.` }];
  });
}

interface Serving {
  readonly kit: readonly string[];
  readonly ways: number;
}

/** The cheapest kit by day rates, and how many assemblies there are. */
function servingOf(
  choices: Choices,
  { tag, models }: { readonly tag: string; readonly models: readonly Model[] },
): Serving | null {
  const found = choices.classes.find(({ tags }) => tags.includes(tag));
  if (found === undefined) return null;
  const rates = new Map(models.map(({ number, rates: { day_minor } }) => [number, day_minor]));
  const kits = kitsOf(found, (alternative) =>
    alternative.needs.reduce((sum, { item, count }) => sum + count * (rates.get(item) ?? 0), 0),
  );
  const [cheapest] = kits.toSorted((a, b) => a.cost - b.cost || a.key.localeCompare(b.key));
  return { kit: cheapest?.numbers ?? [], ways: kits.reduce((sum, { ways }) => sum + ways, 0) };
}

/** Of each family its cheapest kit; cores and slots are chosen apart, since every core goes with every alternative. */
function kitsOf({ families }: LineClass, costOf: (alternative: Alternative) => number) {
  return families.map(({ cores, slots }) => {
    const chosen = [cores, ...slots].map(
      (shelf) => shelf.toSorted((a, b) => costOf(a) - costOf(b) || a.id.localeCompare(b.id))[0],
    );
    const picked = chosen.flatMap((alternative) => alternative ?? []);
    const numbers = [...new Set(picked.flatMap(({ needs }) => needs.map(({ item }) => item)))].sort();
    return {
      numbers,
      key: numbers.join(),
      cost: picked.reduce((sum, alternative) => sum + costOf(alternative), 0),
      ways: slots.reduce((product, slot) => product * slot.length, cores.length),
    };
  });
}
