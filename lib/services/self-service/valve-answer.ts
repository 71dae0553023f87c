/*
 * What each valve of an order gets: its kit drawn, what that can and cannot do, what was assumed, and whether the Desk must look.
 * Invariant: ranges are told as they are, low to high, each with whether it was guessed.
 * Not here: the whole order (order-answer.ts).
 * Read next: ../../questions/hand-over.ts.
 */
import { lineAnswers } from '#db/queries/self-orders.ts';
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { driveLine } from '#lib/documents/drawings/drive-line.ts';
import { numbersWith, writer } from '#lib/documents/words/written-forms.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model, Role } from '#lib/equipment/model.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import { type HandOver, handOversOfDuty, handOversOfKit, type SelfServiceBounds } from '#lib/questions/hand-over.ts';
import { QUESTIONS } from '#lib/questions/question-table.ts';
import type { Context } from '#lib/services/context.ts';
import type { OptionPrice } from '#lib/services/quotes/option-price.ts';
import { ownWords } from '#lib/services/quotes/paper-names.ts';
import { readSchedule } from '#lib/services/schedule/schedule-record.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Language } from '#lib/wording/language.ts';
import { tellerFor } from '#lib/wording/told-in.ts';
import type { OpenOrder } from './open-link.ts';
import { readUnknown } from './order-lines.ts';
import { selfServiceFacts } from './self-facts.ts';

/** A range as it is told; `guessed` where nobody stated, measured or computed it from what was. */
export interface ToldRange {
  readonly low: number;
  readonly high: number;
  readonly guessed: boolean;
}

export interface NamedPiece extends Pick<Model, 'name' | 'germanName'> {
  readonly role: Role;
  readonly count: number;
}

export interface ValveKit {
  readonly pieces: readonly NamedPiece[];
  readonly drawing: Drawing;
  /** Torque at the valve that the chain surely gives, and the most that it can put there with its limiter. */
  readonly sure_nm: number;
  readonly most_nm: number;
  readonly stroke_s: ToldRange;
  /** The setting does not reach the highest torque that it may take to start. */
  readonly mayNotMove: boolean;
}

export interface ValveResult {
  readonly lineId: number;
  readonly tag: string;
  readonly qty: number;
  readonly cells: Cells;
  /** Fields that would have been asked and are blank, because they are not known or were not asked. */
  readonly assumed: readonly Column[];
  readonly hasPhoto: boolean;
  readonly starting_nm: ToldRange;
  readonly ceiling_nm: ToldRange;
  readonly turns: ToldRange;
  readonly handOver: readonly HandOver[];
  readonly kit: ValveKit | null;
}

interface Asked {
  readonly opened: OpenOrder;
  readonly option: OptionPrice;
  readonly outcome: PlanOutcome;
  /** What drawings are lettered in. */
  readonly language: Language;
}

export function valveResults(context: Context, { opened, option, outcome, language }: Asked): readonly ValveResult[] {
  const { enquiry, input, planned } = option;
  const answers = lineAnswers(context.database.db, enquiry.row.id);
  const duties = new Map(planned?.worked.duties.map((duty) => [duty.tag, duty]));
  const records = readSchedule(opened.desk, enquiry);
  const bounds = selfServiceFacts(context);
  const lettering = letteringIn(language, input);
  return input.lines.flatMap((line, index): readonly ValveResult[] => {
    const duty = duties.get(line.tag);
    const record = records[index];
    if (duty === undefined || record === undefined) return [];
    const assembly = assemblyOf(outcome, line);
    const answer = answers.get(record.row.id);
    const site = enquiry.site;
    return [
      {
        lineId: record.row.id,
        tag: line.tag,
        qty: line.qty,
        cells: record.cells,
        assumed: assumedOf({
          line,
          duty,
          cells: record.cells,
          site,
          unknown: readUnknown(answer?.unknown_json ?? '[]'),
        }),
        hasPhoto: answer?.photo_id != null,
        ...torqueView(duty),
        handOver: reasonsOf({ line, duty, site, assembly, option, bounds }),
        kit: assembly === null ? null : kitOf({ assembly, models: input.models, line, duty, ...lettering }),
      },
    ];
  });
}

/** Reasons of the line itself, and whether anything the house has serves it. What is short on these days is told of the whole order. */
function reasonsOf(asked: {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly site: OptionPrice['enquiry']['site'];
  readonly assembly: Assembly | null;
  readonly option: OptionPrice;
  readonly bounds: SelfServiceBounds;
}): readonly HandOver[] {
  const { line, duty, site, assembly, option, bounds } = asked;
  const own = handOversOfDuty({ line, duty, site, bounds });
  const isUnserved = option.planned?.worked.unserved.some(({ tag }) => tag === line.tag) ?? false;
  if (assembly === null) return isUnserved && !duty.seized ? [...own, ...handOversOfKit(null)] : own;
  return [...own, ...handOversOfKit(modelsOf(assembly, option.input.models).map(({ model }) => model))];
}

function assemblyOf({ lines, assemblies }: PlanOutcome, { tag }: ScheduleLine): Assembly | null {
  const part = lines.find((line) => line.tag === tag)?.parts[0];
  return part === undefined ? null : (assemblies[part.assembly] ?? null);
}

function kitOf({
  assembly,
  models,
  line,
  duty,
  tell,
}: {
  readonly assembly: Assembly;
  readonly models: readonly Model[];
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly tell?: (words: string) => string;
}): ValveKit {
  const { figures, opening, closing } = assembly;
  const sides = [opening, closing];
  return {
    pieces: modelsOf(assembly, models).map(({ model, count }) => namedPiece(model, count)),
    drawing: driveLine({ assembly, models, line, duty, system: 'si', ...(tell === undefined ? {} : { tell }) }),
    sure_nm: figures.sureAtValve,
    most_nm: figures.highestAtValve,
    stroke_s: {
      low: Math.min(...sides.map(({ strokeTime }) => strokeTime.low)),
      high: Math.max(...sides.map(({ strokeTime }) => strokeTime.high)),
      guessed: isGuess(duty.turns),
    },
    mayNotMove: sides.some(({ unseat, run }) => (unseat ?? run)?.coversStarting === false),
  };
}

/** A piece by its names. */
export function namedPiece({ name, germanName, role }: Model, count: number): NamedPiece {
  return { name, ...(germanName === undefined ? {} : { germanName }), role, count };
}

/** Drawings in the language, with the names of equipment, and figures as it writes them. */
function letteringIn(
  language: Language,
  { models, lines }: Pick<OptionPrice['input'], 'models' | 'lines'>,
): { readonly tell?: (words: string) => string } {
  if (language === 'en') return {};
  const names = [
    ...models.flatMap(({ number, name, germanName = name }) => [number, germanName]),
    ...lines.map(({ tag }) => tag),
  ];
  const { tell } = tellerFor({ language, names, own: ownWords({ models, house: {} }) });
  const write = writer({
    forms: { dates: 'day-month-year', numbers: numbersWith('comma'), commas: 'rewritten' },
    names,
  });
  return { tell: (words) => write(tell(words)) };
}

function modelsOf({ parts }: Assembly, models: readonly Model[]) {
  const chain = [
    parts.drive,
    parts.head,
    ...new Set([...parts.extensions, ...(parts.adapterExtensions ?? []).flat()]),
    ...new Set(parts.adapters),
    parts.restraint,
    ...parts.options,
  ].map((number) => ({ number, count: 1 }));
  return [...chain, ...parts.accessories].flatMap(({ number, count }) => {
    const model = models.find((one) => one.number === number);
    return model === undefined ? [] : [{ model, count }];
  });
}

function assumedOf({
  line,
  duty,
  cells,
  site,
  unknown,
}: {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly cells: Cells;
  readonly site: OptionPrice['enquiry']['site'];
  readonly unknown: readonly Column[];
}): readonly Column[] {
  const asked = QUESTIONS.filter(({ applies }) => applies({ cells, line, duty, site })).map(({ column }) => column);
  const all = [...new Set([...unknown, ...asked])];
  return all.filter((column) => (cells[column] ?? '').trim() === '');
}

/** The torque of the worse direction, the ceiling, and the turns. */
export function torqueView({
  opening,
  closing,
  turns,
}: Duty): Pick<ValveResult, 'starting_nm' | 'ceiling_nm' | 'turns'> {
  const worse = opening.starting.high < closing.starting.high ? closing : opening;
  return { starting_nm: told(worse.starting), ceiling_nm: told(worse.neverExceed.torque), turns: told(turns) };
}

function told<U extends Unit>(value: Known<U>): ToldRange {
  return { low: value.low, high: value.high, guessed: isGuess(value) };
}

function isGuess({ basis }: Known<Unit>): boolean {
  return basis === 'assumed' || basis === 'rule of thumb';
}
