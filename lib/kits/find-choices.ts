/*
 * What each class of equal lines may be done with, factored into families; or why nothing fits.
 * Invariant: equal lines are solved once; every line ends up in a class with families or among the unserved.
 * Not here: sharing the choices out over crews (fleet).
 * Read next: search-class.ts, why/explain-none.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { LineClass } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { placeOf } from '#lib/rules/place-facts.ts';
import { seconds } from '#lib/units/quantity.ts';
import { catalogueOf } from './catalogue.ts';
import { classKey, shortName } from './class-key.ts';
import { familiesOf } from './cores/families.ts';
import { ALL_REFUSALS, newTally } from './refusals.ts';
import { type ClassQuestion, canBeServed, type FoundCore, searchClass } from './search-class.ts';
import { explainNone, type ToldHow } from './why/explain-none.ts';
import type { Reason } from './why/reason.ts';
import type { Repair } from './why/repairs.ts';
import type { KitConstraints } from './wishes.ts';

export interface LineDuty {
  readonly line: ScheduleLine;
  readonly duty: Duty;
}

export interface Unserved {
  readonly tag: string;
  readonly classId: string;
  readonly because: readonly Finding[];
  readonly repairs: readonly Repair[];
  readonly reasons?: Reason;
}

export interface Choices {
  readonly classes: readonly LineClass[];
  readonly unserved: readonly Unserved[];
  readonly effort: Readonly<Record<string, number>>;
}

export interface ChoicesInput {
  readonly lines: readonly LineDuty[];
  readonly site: Site;
  readonly models: readonly Model[];
  readonly constraints: KitConstraints;
  /** How much is told of lines that nothing serves; in short where nothing is said. */
  readonly told?: ToldHow;
}

interface Group {
  readonly id: string;
  readonly lines: LineDuty[];
  readonly pinned: readonly string[];
}

export function findChoices(input: ChoicesInput): Choices {
  const tally = newTally();
  const { stock, frames } = catalogueOf(input.models, input.constraints);
  const groups = groupLines(input);
  const classes: LineClass[] = [];
  const unserved: Unserved[] = [];
  for (const group of groups) {
    const [first] = group.lines;
    if (first === undefined) continue;
    const facts = factsOf({ ...first, site: input.site });
    tally.refusing.clear();
    const question = { facts, stock, frames, refusals: ALL_REFUSALS, wishes: [], tally, made: 'stock only' } as const;
    const answer = answerWithWishes({ question, group, input });
    if (answer.found.length === 0) {
      const why = explainNone({
        question: { ...question, wishes: answer.wishes },
        models: input.models,
        constraints: input.constraints,
        how: input.told,
      });
      unserved.push(...group.lines.map(({ line }) => ({ tag: line.tag, classId: group.id, ...why })));
    } else {
      classes.push(lineClass({ group, site: input.site, families: familiesOf({ facts, stock, found: answer.found }) }));
    }
  }
  const { evaluations, cores, pairs } = tally;
  return {
    classes,
    unserved,
    effort: {
      classes: groups.length,
      frames: frames.frames.length,
      frame_evaluations: frames.evaluations,
      rule_evaluations: evaluations,
      cores,
      pairs,
    },
  };
}

export function factsOf({ line, duty, site }: LineDuty & { readonly site: Site }): LineFacts {
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}

/** Stock pieces first; what is made to order only where no stock piece does it. */
export function searchStockFirst(question: ClassQuestion): readonly FoundCore[] {
  const found = searchClass({ ...question, made: 'stock only' });
  const isAllStock = !question.stock.all.some((model) => model.madeToOrder);
  return found.length > 0 || isAllStock ? found : searchClass({ ...question, made: 'made to order too' });
}

function groupLines({ lines, constraints }: ChoicesInput): readonly Group[] {
  const groups = new Map<string, Group>();
  const taken = new Set<string>();
  for (const one of lines) {
    const pinned = constraints.pins.filter((pin) => pin.tag === one.line.tag).map((pin) => pin.part);
    const key = `${classKey(one.line, one.duty)} ${pinned.join(' ')}`;
    const known = groups.get(key);
    if (known !== undefined) {
      known.lines.push(one);
      continue;
    }
    let id = shortName(key);
    while (taken.has(id)) id = `${id}x`;
    taken.add(id);
    groups.set(key, { id, lines: [one], pinned });
  }
  return [...groups.values()];
}

/** A pin holds even where it leaves nothing; a locked part is used wherever it can be. */
function answerWithWishes(at: {
  readonly question: ClassQuestion;
  readonly group: Group;
  readonly input: ChoicesInput;
}): { readonly found: readonly FoundCore[]; readonly wishes: readonly Model[] } {
  const { question, group, input } = at;
  const byNumber = (numbers: readonly string[]): readonly Model[] =>
    numbers.flatMap((number) => question.stock.all.find((model) => model.number === number) ?? []);
  let wishes = byNumber(group.pinned);
  if (wishes.length < group.pinned.length) return { found: [], wishes };
  for (const locked of byNumber(input.constraints.lockedParts)) {
    const more = [...wishes, locked];
    const held = { ...question, wishes: more };
    if (canBeServed({ ...held, made: 'made to order too' })) wishes = more;
  }
  return { found: searchStockFirst({ ...question, wishes }), wishes };
}

function lineClass(at: {
  readonly group: Group;
  readonly site: Site;
  readonly families: LineClass['families'];
}): LineClass {
  const { lines, id } = at.group;
  const access = lines[0]?.line.place.accessTime?.nominal ?? 0;
  return {
    id,
    tags: lines.map(({ line }) => line.tag),
    qty: lines.reduce((sum, { line }) => sum + line.qty, 0),
    moveTime: seconds(at.site.moveMinutes * 60 + access),
    families: at.families,
  };
}
