import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { reactionFigures, reactionsOf } from '#lib/kits/chain/reactions.ts';
import { coreFigures, unlimitedFigures } from '#lib/kits/cores/core-figures.ts';
import { newCoreMemo } from '#lib/kits/cores/core-memo.ts';
import { type Frame, findFrames } from '#lib/kits/cores/frames.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { CASE_FIELDS } from '#lib/kits/grips/case-bits.ts';
import { gripCases } from '#lib/kits/grips/grip-cases.ts';
import {
  CASE_OF_ADAPTER,
  CORE_OF_LIMITER,
  CORE_OF_MESH,
  CORE_OF_OPTIONS,
  CORE_WITHOUT_COUNTER,
  CORE_WITHOUT_HEAD,
  GRIP_OF_HEAD,
  GRIP_SPEED_LIMITS,
  GRIP_TORQUE_LIMITS,
  LINK_OF_EXTENSIONS,
  REACTION_OF_HEAD,
  REACTION_STALL_LIMITS,
  REACTION_TORQUE_LIMITS,
} from '#lib/kits/narrow-views.ts';
import { ALL_REFUSALS, newTally } from '#lib/kits/refusals.ts';
import type { ClassQuestion } from '#lib/kits/search-class.ts';
import { type StockByRole, stockByRole } from '#lib/kits/stock-by-role.ts';
import { trialsFor } from '#lib/kits/why/repair-trials.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { Core, LineFacts } from '#lib/rules/facts.ts';
import { sampleCore } from '#lib/rules/sample-facts.ts';
import { sampleCounter, sampleHead, sampleKey, sampleLimiter, sampleShaft } from '#lib/rules/sample-parts.ts';
import { newtonMetres, perMinute } from '#lib/units/quantity.ts';
import { randomKitCase } from '#tests/support/kits/kit-cases.ts';

/** Answers of rules, each asked twice: with what it is said to look at, and with all else changed. */
const asked = new Map<string, { yes: number; no: number }>();

function agree(id: string, first: boolean, second: boolean): void {
  expect(second, id).toBe(first);
  const seen = asked.get(id) ?? { yes: 0, no: 0 };
  asked.set(id, seen);
  if (first) seen.yes += 1;
  else seen.no += 1;
}

function rule<Named extends { readonly id: string }>(rules: readonly Named[], id: string): Named {
  const found = rules.find((one) => one.id === id);
  if (found === undefined) throw new Error(`There is no rule ${id}.`);
  return found;
}

/** A random line with a house, and a way to draw parts. */
function setting(seed: number) {
  const random = seededRandom(seed);
  const kitCase = randomKitCase(seed);
  const facts = factsOf({ ...kitCase.lineDuty, site: kitCase.site });
  const stock = stockByRole(kitCase.models);
  const draw = <Value>(values: readonly Value[]): Value | undefined => values[Math.floor(random() * values.length)];
  const chain = (): readonly ExtensionModel[] =>
    [draw(stock.extensions), draw(stock.extensions)].flatMap((one) => one ?? []);
  return { random, facts, stock, draw, chain };
}

function questionOf(facts: LineFacts, stock: StockByRole): ClassQuestion {
  return {
    facts,
    stock,
    frames: findFrames(stock),
    refusals: ALL_REFUSALS,
    wishes: [],
    tally: newTally(),
    made: 'stock only',
  };
}

function coreOf(facts: LineFacts, frame: Frame, gearIndex = 0): Core | null {
  const { drive, limiter, head } = frame;
  const gear = drive.facts.gears[gearIndex];
  if (gear === undefined) return null;
  const figures = coreFigures({ facts, frame, gearIndex, limiterUpTo: 'needed' });
  return { drive, limiter, head, gear, gearIndex, counter: null, figures };
}

/** The same core with other torques and speeds, now and then exactly at a limit. */
function otherwise(core: Core, at: { readonly random: Random; readonly limits: readonly number[] }): Core {
  const { random, limits } = at;
  const near = limits[Math.floor(random() * limits.length)] ?? 0;
  const value =
    [near, near * (1 + 2e-16), near * (1 + 1e-9), near * (0.5 + random())][Math.floor(random() * 4)] ?? near;
  const torque = newtonMetres(Number.isFinite(value) ? value : 1000 * random());
  const way = { ...core.figures.opening, fastest: perMinute(torque) };
  const figures = { ...core.figures, stallAtValve: torque, highestAtValve: torque, opening: way, closing: way };
  return { ...core, figures };
}

const SEEDS = fc.integer({ min: 1, max: 2 ** 30 });

describe('rules that are said to look at less than their scope offers', () => {
  it('answer the same whatever else is changed, for links and cases', () => {
    const run = (seed: number): void => {
      const { facts, stock, draw, chain } = setting(seed);
      const [adapter, other]: readonly (AdapterModel | undefined)[] = [draw(stock.adapters), draw(stock.adapters)];
      if (adapter === undefined || other === undefined) return;
      const extensions = chain();
      for (const id of LINK_OF_EXTENSIONS) {
        const { speaks } = rule(RULES_OF.link, id);
        agree(id, speaks({ ...facts, adapter, extensions }), speaks({ ...facts, adapter: other, extensions }));
      }
      const cases = gripCases({ facts, adapters: stock.adapters });
      const gripCase = draw(cases);
      if (gripCase === undefined) return;
      const trials = trialsFor({ question: questionOf(facts, stock), conflict: [] }).filter(
        ({ id }) => !/^(release|measure-|count-spokes|stem-|wheel-stays)/.test(id),
      );
      const trial = draw(trials);
      for (const { id, speaks } of trial === undefined ? [] : RULES_OF.case) {
        const first = speaks({ ...facts, adapter, extensions, gripCase });
        const tried = trial?.at(trial.widest).to(facts) ?? facts;
        agree(
          `${id} whatever is changed of torque, site and place`,
          first,
          speaks({ ...tried, adapter, extensions, gripCase }),
        );
      }
      for (const id of CASE_OF_ADAPTER) {
        const { speaks } = rule(RULES_OF.case, id);
        const first = speaks({ ...facts, adapter, extensions, gripCase });
        agree(id, first, speaks({ ...facts, adapter, extensions: chain(), gripCase }));
      }
      for (const [id, fields] of CASE_FIELDS) {
        const { speaks } = rule(RULES_OF.case, id);
        const seen = (one: object): string =>
          JSON.stringify(Object.entries(one).filter(([name]) => fields.includes(name)));
        for (const alike of cases.filter((one) => one.kind === gripCase.kind && seen(one) === seen(gripCase))) {
          const first = speaks({ ...facts, adapter, extensions, gripCase });
          agree(`${id} by ${fields.join()}`, first, speaks({ ...facts, adapter, extensions, gripCase: alike }));
        }
      }
    };
    fc.assert(fc.property(SEEDS, run), { seed: 31, numRuns: 1500 });
  });

  it('answer the same whatever else is changed, for cores', () => {
    const run = (seed: number): void => {
      const { facts, stock, draw } = setting(seed);
      const { frames } = findFrames(stock);
      const frame = draw(frames);
      const core = frame === undefined ? null : coreOf(facts, frame);
      if (frame === undefined || core === null) return;
      const counter = sampleCounter({ facts: { sits: 'after head' } });
      for (const id of CORE_WITHOUT_COUNTER) {
        const { speaks } = rule(RULES_OF.core, id);
        agree(id, speaks({ ...facts, core }), speaks({ ...facts, core: { ...core, counter } }));
      }
      const input = { facts, frame, gearIndex: 0, limiterUpTo: 'needed' } as const;
      const bare = { ...core, limiter: null, counter, figures: unlimitedFigures(input, newCoreMemo()) };
      for (const id of CORE_OF_MESH) {
        const { speaks } = rule(RULES_OF.core, id);
        agree(`${id} without limiter`, speaks({ ...facts, core }), speaks({ ...facts, core: bare }));
      }
      const another = draw(frames);
      const alien = another === undefined ? null : coreOf(facts, another);
      for (const id of alien === null ? [] : CORE_OF_LIMITER) {
        const { speaks } = rule(RULES_OF.core, id);
        const { limiter, limiterRequired, opening, closing } = core.figures;
        const ways = {
          opening: { ...alien?.figures.opening, ceiling: opening.ceiling },
          closing: { ...alien?.figures.closing, ceiling: closing.ceiling },
        };
        const figures = { ...core.figures, ...alien?.figures, ...ways, limiter, limiterRequired };
        const changed = { ...core, ...alien, counter, figures } as Core;
        agree(`${id} by its limiter`, speaks({ ...facts, core }), speaks({ ...facts, core: changed }));
      }
      const other = draw(frames)?.head ?? core.head;
      const head = { ...other, facts: { ...other.facts, ratio: core.head.facts.ratio } };
      for (const id of CORE_WITHOUT_HEAD) {
        const { speaks } = rule(RULES_OF.core, id);
        agree(`${id} by figures`, speaks({ ...facts, core }), speaks({ ...facts, core: { ...core, head } }));
      }
      const stranger = coreOf(facts, draw(frames) ?? frame) ?? core;
      const clipped = draw([null, counter, sampleCounter()]) ?? null;
      for (const id of CORE_OF_OPTIONS) {
        const { speaks } = rule(RULES_OF.core, id);
        const { limiter } = core;
        const first = speaks({ ...facts, core: { ...core, counter: clipped } });
        agree(id, first, speaks({ ...facts, core: { ...stranger, limiter, counter: clipped } }));
      }
    };
    fc.assert(fc.property(SEEDS, run), { seed: 32, numRuns: 1500 });
  });

  it('speak exactly above their limits, for grips and restraints', () => {
    const run = (seed: number): void => {
      const { random, facts, stock, draw, chain } = setting(seed);
      const frame = draw(findFrames(stock).frames);
      const adapter = draw(stock.adapters);
      const base = frame === undefined ? null : coreOf(facts, frame);
      const reaction = draw(reactionsOf({ restraints: stock.restraints, stock, facts }));
      if (base === null || adapter === undefined || reaction === undefined) return;
      const parts = { adapter, extensions: chain() };
      const { restraint } = reaction;
      const limits = [
        ...[...GRIP_TORQUE_LIMITS.values(), ...GRIP_SPEED_LIMITS.values()].map((limit) => limit(parts)),
        ...[...REACTION_STALL_LIMITS.values(), ...REACTION_TORQUE_LIMITS.values()].map((limit) => limit(restraint)),
      ];
      const core = otherwise(base, { random, limits });
      const { stallAtValve, highestAtValve, opening } = core.figures;
      const grip = { ...facts, ...parts, core };
      const held = { ...facts, ...reaction, core, reaction: reactionFigures({ core, restraint }) };
      for (const [id, limit] of GRIP_TORQUE_LIMITS)
        agree(id, rule(RULES_OF.grip, id).speaks(grip), highestAtValve > limit(parts));
      for (const [id, limit] of GRIP_SPEED_LIMITS)
        agree(id, rule(RULES_OF.grip, id).speaks(grip), opening.fastest > limit(parts));
      for (const id of GRIP_OF_HEAD)
        agree(id, rule(RULES_OF.grip, id).speaks(grip), rule(RULES_OF.grip, id).speaks({ ...grip, core: base }));
      for (const [id, limit] of REACTION_STALL_LIMITS)
        agree(id, rule(RULES_OF.reaction, id).speaks(held), stallAtValve > limit(restraint));
      for (const [id, limit] of REACTION_TORQUE_LIMITS)
        agree(id, rule(RULES_OF.reaction, id).speaks(held), highestAtValve > limit(restraint));
      const weak = { ...held, core: base, reaction: reactionFigures({ core: base, restraint }) };
      for (const id of REACTION_OF_HEAD)
        agree(id, rule(RULES_OF.reaction, id).speaks(held), rule(RULES_OF.reaction, id).speaks(weak));
    };
    fc.assert(fc.property(SEEDS, run), { seed: 33, numRuns: 6000 });
  });

  it('answer the same on their own examples, which speak at least once each', () => {
    const shaft = sampleShaft({ number: 'X-9' });
    const figures = { ...sampleCore().figures, stallAtValve: newtonMetres(1), highestAtValve: newtonMetres(1) };
    const under = sampleCounter({ facts: { sits: 'after head' } });
    const hold = <Facts>(
      rules: readonly {
        readonly id: string;
        readonly speaks: (facts: Facts) => boolean;
        readonly examples: () => readonly { readonly facts: Facts }[];
      }[],
      ids: Iterable<string>,
      change: (facts: Facts) => Facts,
    ): void => {
      for (const id of ids) {
        const one = rule(rules, id);
        for (const { facts } of one.examples()) agree(id, one.speaks(facts), one.speaks(change(facts)));
      }
    };
    hold(RULES_OF.link, LINK_OF_EXTENSIONS, (facts) => ({ ...facts, adapter: sampleKey() }));
    hold(RULES_OF.case, CASE_OF_ADAPTER, (facts) => ({ ...facts, extensions: [shaft] }));
    hold(RULES_OF.core, CORE_WITHOUT_COUNTER, (facts) => ({ ...facts, core: { ...facts.core, counter: under } }));
    hold(RULES_OF.core, CORE_OF_MESH, (facts) => {
      const unlimited = { ...facts.core.figures, limiter: null };
      return { ...facts, core: { ...facts.core, limiter: sampleLimiter(), figures: unlimited } };
    });
    const head = sampleHead({ number: 'X-8' });
    hold(RULES_OF.core, CORE_WITHOUT_HEAD, (facts) => ({ ...facts, core: { ...facts.core, head } }));
    hold(RULES_OF.core, CORE_OF_OPTIONS, (facts) => ({
      ...facts,
      core: { ...facts.core, head, figures: sampleCore().figures },
    }));
    hold(RULES_OF.grip, GRIP_OF_HEAD, (facts) => ({ ...facts, core: { ...facts.core, figures } }));
    hold(RULES_OF.reaction, REACTION_OF_HEAD, (facts) => ({ ...facts, core: { ...facts.core, figures } }));
  });

  it('were asked often enough to tell', () => {
    const told = [...asked].map(([id, { yes, no }]) => `${id} ${yes}/${no}`);
    console.info(`narrow views, spoke/kept still: ${told.join(', ')}`);
    const named = [
      ...[...LINK_OF_EXTENSIONS, ...CASE_OF_ADAPTER, ...CORE_WITHOUT_COUNTER, ...CORE_OF_OPTIONS],
      ...[...GRIP_OF_HEAD, ...REACTION_OF_HEAD],
      ...[GRIP_TORQUE_LIMITS, GRIP_SPEED_LIMITS, REACTION_STALL_LIMITS, REACTION_TORQUE_LIMITS].flatMap((limits) => [
        ...limits.keys(),
      ]),
    ];
    for (const id of named) {
      const { yes, no } = asked.get(id) ?? { yes: 0, no: 0 };
      expect(Math.min(yes, no), `${id} spoke ${yes} times and kept still ${no} times`).toBeGreaterThan(0);
      expect(yes + no, id).toBeGreaterThan(1000);
    }
  });
});
