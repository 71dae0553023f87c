import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Alternative, ItemNeed, LineClass } from '#lib/equipment/choices.ts';
import { coreTime, counterTime, gripTime, reactionTime } from '#lib/kits/chain/chain-times.ts';
import { coreChance } from '#lib/kits/cores/core-chance.ts';
import { findFrames } from '#lib/kits/cores/frames.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { doesAsWell, type GripElement } from '#lib/kits/grips/grip-elements.ts';
import { partsOf } from '#lib/kits/parts-of.ts';
import { ALL_REFUSALS, newTally } from '#lib/kits/refusals.ts';
import { stockByRole } from '#lib/kits/stock-by-role.ts';
import { conflictOf } from '#lib/kits/why/explain-none.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import { checkedAssembly, checkedChoices, checkedList } from '#tests/support/checked.ts';
import { type Enumerated, enumerateKits, type Link } from '#tests/support/kits/enumerate-kits.ts';
import { type KitCase, randomKitCase } from '#tests/support/kits/kit-cases.ts';

const SEEDS = fc.integer({ min: 1, max: 2 ** 30 });
const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

const choicesOf = ({ lineDuty, site, models }: KitCase) =>
  checkedChoices({ lines: [lineDuty], site, models, constraints: NONE });

function everything(kitCase: KitCase): readonly Enumerated[] {
  const stock = enumerateKits(kitCase, { made: 'stock only' });
  const small = stock.filter((one) => coversOf(one).length > 0);
  return small.length > 0
    ? small
    : enumerateKits(kitCase, { made: 'made to order too' }).filter((one) => coversOf(one).length > 0);
}

/** All sets of one, two or three links that take every case; a link that a shorter one replaces everywhere is not counted. */
function coversOf({ links: all, cases }: Enumerated): readonly (readonly Link[])[] {
  const bits = all.map(({ link, takes }) => ({
    ...link,
    input: link.extensions[0]?.facts.input ?? link.adapter.facts.input,
    takes: takes.reduce((sum, one) => sum | (1n << BigInt(cases.indexOf(one))), 0n),
  }));
  const links = all.filter((_, index) => bits.every((other) => !replaces(other, bits[index])));
  const sets = links.flatMap((a, i) => [
    [a],
    ...links.slice(i + 1).flatMap((b, j) => [[a, b], ...links.slice(i + j + 2).map((c) => [a, b, c])]),
  ]);
  return sets
    .filter((set) => cases.every((one) => set.some(({ takes }) => takes.includes(one))))
    .map((set) => set.map(({ link }) => link));
}

function replaces(other: GripElement, one: GripElement | undefined): boolean {
  return one !== undefined && other.adapter === one.adapter && other.extensions.length < 2 && doesAsWell(other, one);
}

function needsOf(one: Enumerated, cover: readonly Link[]): ReadonlyMap<string, number> {
  const { core, reaction } = one;
  const needs = new Map<string, number>();
  for (const part of [core.drive, core.head, core.limiter, core.counter, reaction.restraint, reaction.secondChain]) {
    if (part !== null) needs.set(part.number, 1);
  }
  for (const { adapter, extensions } of cover) {
    needs.set(adapter.number, 1);
    for (const extension of extensions) {
      const count = extensions.filter((other) => other === extension).length;
      needs.set(extension.number, Math.max(needs.get(extension.number) ?? 0, count));
    }
  }
  return needs;
}

interface Combination {
  readonly needs: readonly ItemNeed[];
  readonly time: number;
  readonly chance: number;
}

/** Every choice of one alternative from each slot. */
function choicesIn(slots: readonly (readonly Alternative[])[]): readonly (readonly Alternative[])[] {
  return slots.reduce<readonly (readonly Alternative[])[]>(
    (chosen, slot) => chosen.flatMap((before) => slot.map((one) => [...before, one])),
    [[]],
  );
}

function combinations(lineClass: LineClass): readonly Combination[] {
  return lineClass.families.flatMap(({ cores, slots }) =>
    cores.flatMap((core) => choicesIn(slots).map((chosen) => sum([core, ...chosen]))),
  );
}

const sum = (parts: readonly Alternative[]): Combination => ({
  needs: parts.flatMap((part) => part.needs),
  time: parts.reduce((total, part) => total + part.timePerValve, 0),
  chance: parts.reduce((product, part) => product * part.chance, 1),
});

function scoreOf({ models }: KitCase, { parts, figures }: Assembly): readonly number[] {
  const extensions = [parts.extensions, ...(parts.adapterExtensions ?? [])].flat();
  const numbers = [
    parts.drive,
    parts.head,
    ...parts.options,
    ...new Set(extensions),
    ...new Set(parts.adapters),
    parts.restraint,
    ...parts.accessories.map(({ number }) => number),
  ];
  const cost = numbers.reduce(
    (total, number) => total + (models.find((model) => model.number === number)?.rates.day_minor ?? 0),
    0,
  );
  return [cost, figures.mass, figures.timePerValve, numbers.length, -figures.chance];
}

describe('choices', () => {
  it('serve a line exactly when trying everything finds an assembly', () => {
    let served = 0;
    let unserved = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const expected = everything(kitCase).length > 0;
        const choices = choicesOf(kitCase);
        expect(choices.classes.length > 0).toBe(expected);
        expect(choices.unserved.length > 0).toBe(!expected);
        if (expected) served += 1;
        else unserved += 1;
      }),
      { seed: 21, numRuns: 500 },
    );
    console.info(`choices: ${served} served and ${unserved} unserved lines agree with enumeration`);
    expect(Math.min(served, unserved)).toBeGreaterThan(80);
  });

  it('offer only assemblies that every rule lets pass, in every combination of a family', () => {
    let checked = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const choices = choicesOf(kitCase);
        for (const { id: classId, families } of choices.classes) {
          for (const { id: family, cores, slots } of families) {
            for (const core of cores) {
              for (const chosen of choicesIn(slots).slice(0, 12)) {
                const served = { family, core: core.id, slots: chosen.map(({ id }) => id) };
                const parts = partsOf({ classId, served, choices });
                const assembly = checkedAssembly({ ...kitCase, parts });
                expect(assembly.findings.filter((finding) => finding.severity === 'refusal')).toEqual([]);
                expect(assembly.figures.timePerValve).toBe(sum([core, ...chosen]).time);
                checked += 1;
              }
            }
          }
        }
      }),
      { seed: 22, numRuns: 400 },
    );
    console.info(`families: ${checked} combinations built and judged by all rules`);
    expect(checked).toBeGreaterThan(500);
  });

  it('leave out nothing that a kept combination does not match in needs, time and chance', () => {
    let matched = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const facts = factsOf({ ...kitCase.lineDuty, site: kitCase.site });
        const kept = choicesOf(kitCase).classes.flatMap(combinations);
        for (const one of everything(kitCase)) {
          for (const cover of coversOf(one)) {
            const needs = needsOf(one, cover);
            const time =
              coreTime({ facts, core: one.core }) +
              counterTime(one.core.counter) +
              gripTime({ elements: cover }) +
              reactionTime(one.reaction);
            const chance = coreChance({ facts, core: one.core });
            const match = kept.some(
              (other) =>
                other.time <= time &&
                other.chance >= chance - 1e-9 &&
                other.needs.every((need) => (needs.get(need.item) ?? 0) >= need.count),
            );
            expect(match, `seed ${seed}: ${[...needs.keys()].join('+')}`).toBe(true);
            matched += 1;
          }
        }
      }),
      { seed: 23, numRuns: 250 },
    );
    console.info(`dominance: ${matched} enumerated assemblies matched by a kept one`);
    expect(matched).toBeGreaterThan(1000);
  });

  it('list no assembly that another listed one beats', () => {
    let listed = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const { assemblies } = checkedList({ ...kitCase, constraints: NONE, limit: 40 });
        const scores = assemblies.map((assembly) => scoreOf(kitCase, assembly));
        for (const [index, score] of scores.entries()) {
          const beaten = scores.some(
            (other, at) => at !== index && other.every((value, place) => value <= (score[place] ?? 0) + 1e-9),
          );
          expect(beaten).toBe(false);
        }
        listed += scores.length;
      }),
      { seed: 24, numRuns: 300 },
    );
    console.info(`lists: ${listed} assemblies listed`);
    expect(listed).toBeGreaterThan(50);
  });
});

describe('reasons why nothing fits', () => {
  it('are impossible by themselves and possible without any one of them', () => {
    let conflicts = 0;
    let dropped = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const stock = stockByRole(kitCase.models);
        const facts = factsOf({ ...kitCase.lineDuty, site: kitCase.site });
        const conflict = conflictOf({
          facts,
          stock,
          frames: findFrames(stock),
          refusals: ALL_REFUSALS,
          wishes: [],
          tally: newTally(),
          made: 'made to order too',
        });
        if (conflict === null) {
          expect(enumerateKits(kitCase, { made: 'made to order too' }).length).toBeGreaterThan(0);
          return;
        }
        const left = (ids: readonly string[]) =>
          enumerateKits(kitCase, { only: new Set(ids), made: 'made to order too' }).length;
        expect(left(conflict)).toBe(0);
        conflicts += 1;
        for (const id of conflict) {
          expect(left(conflict.filter((other) => other !== id)), `without ${id}`).toBeGreaterThan(0);
          dropped += 1;
        }
      }),
      { seed: 25, numRuns: 300 },
    );
    console.info(
      `why not: ${conflicts} conflicts rebuilt and found impossible, ${dropped} made possible by dropping one`,
    );
    expect(dropped).toBeGreaterThan(100);
  });

  it('are told in a sentence for every rule of the conflict, naming a part', () => {
    let told = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        for (const { because } of choicesOf(kitCase).unserved) {
          for (const finding of because) {
            expect(finding.severity).toBe('refusal');
            expect(finding.sentence).not.toMatch(/undefined|NaN|null/);
            told += 1;
          }
        }
      }),
      { seed: 26, numRuns: 200 },
    );
    console.info(`why not: ${told} sentences told`);
    expect(told).toBeGreaterThan(100);
  });

  it('say that a drive, head or restraint fits exactly when some assembly holds it', () => {
    let fitting = 0;
    let refused = 0;
    fc.assert(
      fc.property(SEEDS, (seed) => {
        const kitCase = randomKitCase(seed);
        const all = enumerateKits(kitCase, { made: 'made to order too' });
        for (const { number, role } of kitCase.models) {
          if (role !== 'drive' && role !== 'head' && role !== 'restraint') continue;
          const holds = all.some(({ core, reaction }) =>
            [core.drive, core.head, reaction.restraint].some((part) => part.number === number),
          );
          const answer = explainPart({ ...kitCase, part: number });
          expect(answer.fits, `seed ${seed}, ${number}`).toBe(holds);
          expect(answer.because.length).toBeGreaterThan(0);
          if (holds) fitting += 1;
          else refused += 1;
        }
      }),
      { seed: 27, numRuns: 120 },
    );
    console.info(`why this part: ${fitting} fit, ${refused} do not, as enumeration says`);
    expect(Math.min(fitting, refused)).toBeGreaterThan(50);
  });
});
