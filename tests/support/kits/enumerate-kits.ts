import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { AdapterModel, ExtensionModel, Model, OptionModel } from '#lib/equipment/model.ts';
import { type Reaction, reactionFigures, reactionsOf } from '#lib/kits/chain/reactions.ts';
import { coreFigures } from '#lib/kits/cores/core-figures.ts';
import { factsOf } from '#lib/kits/find-choices.ts';
import { gripCases } from '#lib/kits/grips/grip-cases.ts';
import { lengthMatters } from '#lib/kits/grips/grip-elements.ts';
import { stockByRole } from '#lib/kits/stock-by-role.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import type { Core, FactsOf, GripCase, LineFacts, Scope } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import type { KitCase } from './kit-cases.ts';

export interface Link {
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}

/** One core with one restraint and every link that it may drive, with the cases each link takes. */
export interface Enumerated {
  readonly core: Core;
  readonly reaction: Reaction;
  readonly links: readonly { readonly link: Link; readonly takes: readonly GripCase[] }[];
  readonly cases: readonly GripCase[];
}

const BACKGROUND = 'grip-kind-of-adapter';

/** Tries every part with every other, asking every refusal that is switched on; no pruning of any kind. */
export function enumerateKits(
  { lineDuty, site, models }: KitCase,
  options: { readonly only?: ReadonlySet<string>; readonly made: 'stock only' | 'made to order too' },
): readonly Enumerated[] {
  const facts = factsOf({ ...lineDuty, site });
  const stock = stockByRole(models);
  const passes = judgeWith(options.only);
  if (!passes(RULES_OF.line, facts)) return [];
  const usable = (part: Model): boolean =>
    (options.made === 'made to order too' || !part.madeToOrder) && passes(RULES_OF.part, { ...facts, part });
  const adapters = stock.adapters.filter(usable);
  const cases = gripCases({ facts, adapters: stock.adapters });
  const reactions = reactionsOf({ restraints: stock.restraints.filter(usable), stock, facts });
  const links = adapters.flatMap((adapter) => linksOf({ facts, adapter, extensions: stock.extensions.filter(usable) }));
  return coresOf({ facts, models, usable }).flatMap(({ core, output }) => {
    if (!passes(RULES_OF.core, { ...facts, core })) return [];
    const driven = links.flatMap((link) => {
      const input = link.extensions[0]?.facts.input ?? link.adapter.facts.input;
      if (
        !joins(output, input) ||
        !passes(RULES_OF.link, { ...facts, ...link }) ||
        !passes(RULES_OF.grip, { ...facts, core, ...link })
      )
        return [];
      const takes = cases.filter((gripCase) => passes(RULES_OF.case, { ...facts, ...link, gripCase }));
      return takes.length === 0 ? [] : [{ link, takes }];
    });
    if (!cases.every((one) => driven.some(({ takes }) => takes.includes(one)))) return [];
    return reactions
      .filter((reaction) =>
        passes(RULES_OF.reaction, {
          ...facts,
          core,
          ...reaction,
          reaction: reactionFigures({ core, restraint: reaction.restraint }),
        }),
      )
      .map((reaction) => ({ core, reaction, links: driven, cases }));
  });
}

function judgeWith(only: ReadonlySet<string> | undefined) {
  return <S extends Scope>(rules: readonly RuleOf<S>[], facts: FactsOf[S]): boolean =>
    rules.every(
      (rule) =>
        rule.severity !== 'refusal' ||
        (only !== undefined && rule.id !== BACKGROUND && !only.has(rule.id)) ||
        !rule.speaks(facts),
    );
}

function linksOf(at: {
  readonly facts: LineFacts;
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}): readonly Link[] {
  const { adapter, extensions, facts } = at;
  const chains: readonly (readonly ExtensionModel[])[] = [
    [],
    ...extensions.map((extension) => [extension]),
    ...(lengthMatters(facts) ? extensions.flatMap((first) => extensions.map((second) => [first, second])) : []),
  ];
  return chains
    .filter((chain) =>
      chain.every((one, index) => index === 0 || joins((chain[index - 1] ?? one).facts.output, one.facts.input)),
    )
    .filter((chain) => chain.filter((one) => one.facts.kind === 'universal joint').length <= 1)
    .filter(
      (chain) => joins(chain.at(-1)?.facts.output ?? adapter.facts.input, adapter.facts.input) || chain.length === 0,
    )
    .map((chain) => ({ adapter, extensions: chain }));
}

function coresOf(at: {
  readonly facts: LineFacts;
  readonly models: readonly Model[];
  readonly usable: (part: Model) => boolean;
}): readonly { readonly core: Core; readonly output: Coupling }[] {
  const stock = stockByRole(at.models.filter(at.usable));
  const counters: readonly (OptionModel | null)[] = at.facts.duty.countTurns ? [null, ...stock.counters] : [null];
  return stock.drives.flatMap((drive) =>
    [null, ...stock.limiters].flatMap((limiter) =>
      stock.heads.flatMap((head) => {
        const output = outputIfCoupled({
          drive: drive.facts.output,
          built: drive.facts.limiter !== null,
          limiter,
          head: head.facts,
        });
        if (output === null) return [];
        return drive.facts.gears.flatMap((gear, gearIndex) =>
          counters.map((counter) => {
            const frame = { drive, limiter, head, output };
            const figures = coreFigures({ facts: at.facts, frame, gearIndex, limiterUpTo: 'needed' });
            return { core: { drive, limiter, head, gear, gearIndex, counter, figures }, output };
          }),
        );
      }),
    ),
  );
}

function outputIfCoupled(at: {
  readonly drive: Coupling;
  readonly built: boolean;
  readonly limiter: OptionModel | null;
  readonly head: { readonly input: Coupling; readonly output: Coupling };
}): Coupling | null {
  const { drive, built, limiter, head } = at;
  if (limiter === null) return joins(drive, head.input) ? head.output : null;
  const { input, output, sits } = limiter.facts;
  if (built || input === undefined || output === undefined) return null;
  if (sits === 'after drive') return joins(drive, input) && joins(output, head.input) ? head.output : null;
  return joins(drive, head.input) && joins(head.output, input) ? output : null;
}
