/*
 * Counts what each crew carries against what its work needs, and adds up hours, mass and pieces of the kit, and all kits against the stock.
 * Invariant: a kit holds all that is needed and nothing else; only what runs the drives may lack, and only when the last free one is carried.
 * Not here: working the needs out (crew-needs.ts).
 * Read next: crew-needs.ts.
 */
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { crewNeeds, partsNeeded } from './crew-needs.ts';
import type { Counts, CrewPiece } from './crew-work.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';
import type { CarriedKit, OutcomeFacts } from './outcome-facts.ts';

export function checkCrewKits(facts: OutcomeFacts): readonly Discrepancy[] {
  const { kits, work } = facts.outcome;
  const models = new Map(facts.models.map((model) => [model.number, model]));
  const crews = [...new Set([...work.map(({ crew }) => crew), ...kits.map(({ crew }) => crew)])];
  return [
    ...crews.flatMap((crew) => checkCrew(facts, crew)),
    ...kits.flatMap((kit) => checkSums(kit, models)),
    ...checkStock(facts, models),
  ];
}

function checkCrew(facts: OutcomeFacts, crew: number): readonly Discrepancy[] {
  const kits = facts.outcome.kits.filter((kit) => kit.crew === crew);
  const pieces = piecesOf(facts, crew);
  const carried = countsOf(kits.flatMap(({ items }) => items));
  const has = (number: string): number => carried.get(number) ?? 0;
  const time = timeOf(facts, crew);
  const needed = crewNeeds({ pieces, time, has, site: facts.site, models: facts.models });
  const lacking = countsOf(kits.flatMap((kit) => kit.lacking ?? []));
  return [
    ...holds(kits.length === 1 && Number.isInteger(crew) && crew >= 0 && crew < facts.site.crews, {
      code: 'outcome-crew',
      sentence: `Crew ${crew} has ${kits.length} kits; ${facts.site.crews} crews, counted from 0, have one each where they work.`,
      expected: 'one kit for a crew of the site',
      found: `${kits.length} kits for crew ${crew}`,
    }),
    ...[...new Set([...carried.keys(), ...needed.keys(), ...lacking.keys()])].flatMap((item) => {
      const expected = needed.get(item) ?? 0;
      const found = (carried.get(item) ?? 0) + (lacking.get(item) ?? 0);
      const code = found < expected ? 'outcome-kit-lacks' : 'outcome-kit-surplus';
      return same({ code, what: `What crew ${crew} carries of ${item}, or is told to lack`, expected, found });
    }),
    ...checkLacking(facts, { crew, lacking, carried, parts: partsNeeded(pieces) }),
    ...kits.flatMap((kit) =>
      same({
        code: 'outcome-kit-time',
        what: `The time of crew ${crew} in seconds`,
        expected: time,
        found: kit.time_s,
      }),
    ),
  ];
}

interface Lacking {
  readonly crew: number;
  readonly lacking: Counts;
  readonly carried: Counts;
  /** What the crew's assemblies are made of; no crew goes without these. */
  readonly parts: Counts;
}

function checkLacking(facts: OutcomeFacts, at: Lacking): readonly Discrepancy[] {
  const all = countsOf(facts.outcome.kits.flatMap(({ items }) => items));
  return [...at.lacking].flatMap(([item, count]) => [
    ...atMost({
      code: 'outcome-lacking-part',
      what: `What the assemblies of crew ${at.crew} need of ${item}`,
      expected: at.carried.get(item) ?? 0,
      found: at.parts.get(item) ?? 0,
    }),
    ...holds(count > 0 && (all.get(item) ?? 0) >= freeOf(facts, item), {
      code: 'outcome-lacking-free',
      sentence: `Crew ${at.crew} is said to go without ${count} of ${item}, of which some are free.`,
      expected: `${freeOf(facts, item)} carried before any lacks`,
      found: `${all.get(item) ?? 0} carried`,
    }),
  ]);
}

function freeOf({ models, site, free }: OutcomeFacts, item: string): number {
  const model = models.find(({ number }) => number === item);
  if (model === undefined) return 0;
  return model.madeToOrder ? site.crews : (free[item] ?? 0);
}

function piecesOf({ outcome, classes, lines }: OutcomeFacts, crew: number): readonly CrewPiece[] {
  const oxygenTags = new Set(lines.filter(({ process }) => process.service?.value === 'oxygen').map(({ tag }) => tag));
  return outcome.work
    .filter((piece) => piece.crew === crew)
    .flatMap(({ assembly: key, qty, classId }) => {
      const assembly = outcome.assemblies[key];
      const tags = classes.find(({ id }) => id === classId)?.tags ?? [];
      const oxygen = tags.some((tag) => oxygenTags.has(tag));
      return assembly === undefined ? [] : [{ assembly, qty, oxygen }];
    });
}

/** Line by line, from what the crew does there: moving and access, then the time at the valve. */
function timeOf({ outcome, lines, site }: OutcomeFacts, crew: number): number {
  const accessTimes = new Map(lines.map(({ tag, place }) => [tag, place.accessTime?.nominal ?? 0]));
  const done = outcome.lines.flatMap(({ tag, parts }) => parts.map((part) => ({ ...part, tag })));
  return done
    .filter((part) => part.crew === crew)
    .reduce((sum, { tag, qty, assembly }) => {
      const access = accessTimes.get(tag) ?? 0;
      const atValve = outcome.assemblies[assembly]?.figures.timePerValve ?? 0;
      return sum + qty * (site.moveMinutes * 60 + access + atValve);
    }, 0);
}

function checkSums(kit: CarriedKit, models: ReadonlyMap<string, Model>): readonly Discrepancy[] {
  const sum = (of: (model: Model) => number): number =>
    kit.items.reduce((all, { item, count }) => {
      const model = models.get(item);
      return model === undefined ? all : all + of(model) * count;
    }, 0);
  return [
    ...same({
      code: 'outcome-kit-mass',
      what: `The mass in kg of what crew ${kit.crew} carries`,
      expected: sum(({ mass }) => mass),
      found: kit.mass_kg,
    }),
    ...same({
      code: 'outcome-kit-pieces',
      what: `The number of pieces that crew ${kit.crew} carries`,
      expected: sum(({ counted }) => (counted ? 0 : 1)),
      found: kit.pieces,
    }),
  ];
}

function checkStock(facts: OutcomeFacts, models: ReadonlyMap<string, Model>): readonly Discrepancy[] {
  return [...countsOf(facts.outcome.kits.flatMap(({ items }) => items))].flatMap(([item, count]) => [
    ...holds(models.has(item), {
      code: 'outcome-item-unknown',
      sentence: `The crews carry ${item}, which is no model of the house.`,
      expected: 'a model of the house',
      found: item,
    }),
    ...atMost({
      code: 'outcome-stock-exceeded',
      what: `What all crews carry of ${item}`,
      expected: freeOf(facts, item),
      found: count,
    }),
  ]);
}

function countsOf(needs: readonly ItemNeed[]): Counts {
  const counts = new Map<string, number>();
  for (const { item, count } of needs) counts.set(item, (counts.get(item) ?? 0) + count);
  return counts;
}
