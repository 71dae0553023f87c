/*
 * Why a part does or does not serve a line: an assembly that holds it, or the smallest set of rules against it.
 * Invariant: `fits` is true exactly when some assembly of the line holds the part.
 * Not here: lines that nothing serves (explain-none.ts).
 * Read next: explain-none.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { AdapterModel, DriveModel, HeadModel, Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import { findingOf } from '#lib/rules/rule.ts';
import { catalogueOf } from '../catalogue.ts';
import { withoutPartner } from '../cores/frames.ts';
import { factsOf, type LineDuty, searchStockFirst } from '../find-choices.ts';
import { ALL_REFUSALS, newTally } from '../refusals.ts';
import { type ClassQuestion, searchClass } from '../search-class.ts';
import { stockByRole } from '../stock-by-role.ts';
import { conflictTree, findingTree } from './conflict-tree.ts';
import { conflictOf } from './explain-none.ts';
import type { Reason } from './reason.ts';
import { tellConflict } from './tell-conflict.ts';

export interface PartAnswer {
  readonly fits: boolean;
  readonly because: readonly Finding[];
  /** The same as a tree of facts, rules and parts. */
  readonly reasons: Reason;
}

export function explainPart({
  lineDuty,
  site,
  models,
  part,
}: {
  readonly lineDuty: LineDuty;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly part: string;
}): PartAnswer {
  const model = models.find((one) => one.number === part);
  if (model === undefined) return simply({ tag: lineDuty.line.tag, fits: false, part, because: [unknownPart(part)] });
  const { stock, frames } = catalogueOf(models, { excludedParts: [] });
  const facts = factsOf({ ...lineDuty, site });
  const question: ClassQuestion = {
    facts,
    stock,
    frames,
    refusals: ALL_REFUSALS,
    wishes: [model],
    tally: newTally(),
    made: 'stock only',
  };
  if (model.role === 'accessory')
    return simply({ tag: lineDuty.line.tag, fits: false, part, because: [accessoryTold(model)] });
  const found = model.madeToOrder
    ? searchClass({ ...question, made: 'made to order too' })
    : searchStockFirst(question);
  if (found.length > 0)
    return simply({ tag: lineDuty.line.tag, fits: true, part, because: [told(question, model, found.length)] });
  const together = model.role === 'adapter' ? servesInSet(question, model) : null;
  if (together !== null) return simply({ tag: lineDuty.line.tag, fits: true, part, because: [together] });
  const alone = RULES_OF.part
    .filter((rule) => rule.severity === 'refusal' && rule.speaks({ ...facts, part: model }))
    .map((rule) => findingOf(rule, { ...facts, part: model }));
  const refuse = (because: readonly Finding[], children: readonly Reason[]): PartAnswer => ({
    fits: false,
    because,
    reasons: partTree({ fits: false, part, children, tag: facts.line.tag }),
  });
  if (alone.length > 0) return refuse(alone, findingTree(facts, alone));
  const conflict = conflictOf(question) ?? [];
  const around = { question: { ...question, stock: stockAround(stock, model) }, conflict };
  const because = tellConflict(around);
  if (because.length > 0) return refuse(because, conflictTree(around));
  const joinless = nothingJoins(question, model);
  return refuse(joinless, findingTree(facts, joinless));
}

/** An answer that is one finding and rests on nothing further. */
function simply(at: {
  readonly tag: string;
  readonly fits: boolean;
  readonly part: string;
  readonly because: readonly Finding[];
}): PartAnswer {
  const { fits, part, tag, because } = at;
  const children = because.map(({ sentence, source }): Reason => ({ kind: 'fact', sentence, source, children: [] }));
  return { fits, because, reasons: partTree({ fits, part, children, tag }) };
}

function partTree(at: {
  readonly fits: boolean;
  readonly part: string;
  readonly tag: string;
  readonly children: readonly Reason[];
}): Reason {
  const { fits, part, tag, children } = at;
  return { kind: 'answer', sentence: `${part} ${fits ? 'serves' : 'does not serve'} ${tag}.`, children };
}

/** An adapter that takes only some of the sizes the line may have, with others that take the rest; null where no set holds it. */
function servesInSet(question: ClassQuestion, model: AdapterModel): Finding | null {
  const { stock, facts } = question;
  // First in order, it is in the first sets that are found.
  const adapters = [model, ...stock.adapters.filter((one) => one !== model)];
  const found = searchStockFirst({ ...question, wishes: [], stock: { ...stock, adapters } });
  const grip = found
    .flatMap(({ grips }) => grips)
    .find(({ elements }) => elements.some(({ adapter }) => adapter === model));
  if (grip === undefined) return null;
  const numbers = grip.elements.map(({ adapter }) => adapter.number);
  const others = [...new Set(numbers.filter((number) => number !== model.number))];
  return {
    id: 'part-serves-in-set',
    severity: 'note',
    about: [model.number, ...others],
    sentence: `${model.name} ${model.number} serves ${facts.line.tag} in a set: it takes only some of the sizes that are possible, and together with ${others.join(' and ')} it takes all of them. A measurement would tell which one is needed.`,
    source: 'All rules that decide whether an assembly fits',
  };
}

/** Only the part itself in its role, so that sentences speak of it. */
function stockAround(stock: ReturnType<typeof stockByRole>, model: Model): ReturnType<typeof stockByRole> {
  return stockByRole(stock.all.filter((one) => one.role !== model.role || one.number === model.number));
}

function told({ facts, stock }: ClassQuestion, model: Model, cores: number): Finding {
  const better =
    model.madeToOrder && stock.restraints.length > 1
      ? ' It is made to order and is taken only where no stock piece does it.'
      : '';
  return {
    id: 'part-serves-line',
    severity: 'note',
    about: [model.number],
    sentence: `${model.name} ${model.number} serves ${facts.line.tag}: it goes with ${cores} ${cores === 1 ? 'combination' : 'combinations'} of drive, gear, head and options. Which one is taken is a matter of cost, time and what else the kit must do.${better}`,
    source: 'All rules that decide whether an assembly fits',
  };
}

function unknownPart(part: string): Finding {
  return {
    id: 'part-unknown',
    severity: 'refusal',
    about: [part],
    sentence: `The house has no part ${part}.`,
    source: 'The house’s list of equipment',
  };
}

function accessoryTold(model: Model): Finding {
  return {
    id: 'part-is-accessory',
    severity: 'note',
    about: [model.number],
    sentence: `${model.name} ${model.number} is an accessory: it follows from the drive, the adapter and the site, and is not chosen for a line.`,
    source: 'The house’s list of equipment',
  };
}

/** Told from the graph of falls: the couplings, and what every partner of the part fell by. */
function nothingJoins({ facts, stock }: ClassQuestion, model: Model): readonly Finding[] {
  const refusedBy = (part: DriveModel | HeadModel): string | null =>
    part.number === model.number
      ? null
      : (ALL_REFUSALS.part.find((rule) => rule.speaks({ ...facts, part }))?.id ?? null);
  const behind = withoutPartner({ stock, number: model.number, refusedBy });
  const titles = RULES_OF.part.filter((rule) => behind.includes(rule.id)).map((rule) => rule.title.toLowerCase());
  const rest = titles.length === 0 ? '' : ` Those that it joins are refused: ${titles.join('; ')}.`;
  return [
    {
      id: 'couplings-join',
      severity: 'refusal',
      about: [model.number],
      sentence: `${facts.line.tag}: ${model.name} ${model.number} joins nothing that leads to this line.${rest}`,
      source: 'ISO 1174 squares; splines and faces of the house',
    },
  ];
}
