/*
 * Frames: every drive, limiter and head that couple, whatever the line; found once for a catalogue.
 * Invariant: a limiter after the drive sits between drive and head, one after the head under it; a built-in one needs neither.
 * Not here: torque, and rules that look at a line.
 * Read next: ../search-class.ts.
 */
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import type { DriveModel, HeadModel, OptionModel } from '#lib/equipment/model.ts';
import { type CompiledProblem, compileProblem, valueAt } from '#lib/solver/compiled-problem.ts';
import type { Constraint } from '#lib/solver/problem.ts';
import { constraintsBehind, propagate } from '#lib/solver/reasons.ts';
import { search } from '#lib/solver/search.ts';
import { couplingText, type ExtensionChains, extensionChains } from '../grips/extension-chains.ts';
import type { StockByRole } from '../stock-by-role.ts';

export interface Frame {
  readonly drive: DriveModel;
  readonly limiter: OptionModel | null;
  readonly head: HeadModel;
  /** What the grip side couples to. */
  readonly output: Coupling;
}

type FrameValue = DriveModel | HeadModel | OptionModel | null;

const isDrive = (value: FrameValue): value is DriveModel => value?.role === 'drive';
const isHead = (value: FrameValue): value is HeadModel => value?.role === 'head';
const isOption = (value: FrameValue): value is OptionModel => value?.role === 'option';

const inLine = (option: OptionModel, place: 'after drive' | 'after head'): boolean => option.facts.sits === place;

function joinsLimiter(drive: FrameValue, limiter: FrameValue): boolean {
  if (!isDrive(drive) || !isOption(limiter)) return true;
  if (drive.facts.limiter !== null) return false;
  if (!inLine(limiter, 'after drive')) return true;
  return limiter.facts.input !== undefined && joins(drive.facts.output, limiter.facts.input);
}

function joinsHead(limiter: FrameValue, head: FrameValue): boolean {
  if (!isHead(head) || !isOption(limiter)) return true;
  const { input, output } = limiter.facts;
  if (inLine(limiter, 'after drive')) return output !== undefined && joins(output, head.facts.input);
  if (inLine(limiter, 'after head')) return input !== undefined && joins(head.facts.output, input);
  return true;
}

function driveMeetsHead([drive, limiter, head]: readonly FrameValue[]): boolean {
  if (!isDrive(drive ?? null) || !isHead(head ?? null)) return false;
  if (isOption(limiter ?? null) && limiter?.role === 'option' && inLine(limiter, 'after drive')) return true;
  return drive?.role === 'drive' && head?.role === 'head' && joins(drive.facts.output, head.facts.input);
}

const CONSTRAINTS: readonly Constraint<FrameValue>[] = [
  { kind: 'binary', id: 'couplings-join', on: ['drive', 'limiter'], allows: joinsLimiter },
  { kind: 'binary', id: 'couplings-join', on: ['limiter', 'head'], allows: joinsHead },
  { kind: 'chain', id: 'couplings-join', on: ['drive', 'limiter', 'head'], allows: driveMeetsHead },
];

/** A drive and a head that couple, with all that may limit them. */
export interface Mating {
  readonly drive: DriveModel;
  readonly head: HeadModel;
  readonly uses: readonly { readonly frame: Frame; readonly position: number }[];
}

export interface Frames {
  readonly frames: readonly Frame[];
  /** The same frames by drive and head, each with its position among them. */
  readonly matings: readonly Mating[];
  readonly chains: ExtensionChains;
  readonly evaluations: number;
}

function frameProblem(stock: StockByRole, constraints: readonly Constraint<FrameValue>[]): CompiledProblem<FrameValue> {
  return compileProblem<FrameValue>({
    variables: [
      { name: 'drive', values: stock.drives },
      { name: 'limiter', values: [null, ...stock.limiters] },
      { name: 'head', values: stock.heads },
    ],
    constraints,
  });
}

/**
 * Ids of the constraints by which a drive or head falls for want of a partner: couplings, and what its partners fell by.
 * Empty where it has partners left.
 */
export function withoutPartner(at: {
  readonly stock: StockByRole;
  readonly number: string;
  readonly refusedBy: (model: DriveModel | HeadModel) => string | null;
}): readonly string[] {
  const ids = new Set([...at.stock.drives, ...at.stock.heads].flatMap((model) => at.refusedBy(model) ?? []));
  const refusing = [...ids].flatMap((id) =>
    ['drive', 'head'].map(
      (on): Constraint<FrameValue> => ({
        kind: 'unary',
        id,
        on,
        allows: (value) => !(isDrive(value) || isHead(value)) || at.refusedBy(value) !== id,
      }),
    ),
  );
  const direct: Constraint<FrameValue> = {
    kind: 'binary',
    id: 'couplings-join',
    on: ['drive', 'head'],
    allows: (drive, head) =>
      at.stock.limiters.some((limiter) => joinsBetween({ drive, limiter, head })) ||
      driveMeetsHead([drive, null, head]),
  };
  const compiled = frameProblem(at.stock, [...refusing, direct]);
  const fall = propagate(compiled, {}).falls.find(({ variable, value }) => {
    const model = valueAt(compiled.problem, { variable, value });
    return (isDrive(model) || isHead(model)) && model.number === at.number;
  });
  return fall === undefined ? [] : constraintsBehind(fall);
}

function joinsBetween(at: {
  readonly drive: FrameValue;
  readonly limiter: OptionModel;
  readonly head: FrameValue;
}): boolean {
  return inLine(at.limiter, 'after drive') && joinsLimiter(at.drive, at.limiter) && joinsHead(at.limiter, at.head);
}

/** Parts with equal couplings are one value of the search, so that a large house asks no more than a small one. */
export function findFrames(stock: StockByRole): Frames {
  const alike = {
    drives: groupAlike(stock.drives, ({ facts }) => `${couplingKey(facts.output)} ${facts.limiter === null}`),
    limiters: groupAlike(
      stock.limiters,
      ({ facts }) => `${facts.sits} ${couplingKey(facts.input)} ${couplingKey(facts.output)}`,
    ),
    heads: groupAlike(stock.heads, ({ facts }) => `${couplingKey(facts.input)} ${couplingKey(facts.output)}`),
  };
  const firsts = {
    ...stock,
    drives: alike.drives.firsts,
    limiters: alike.limiters.firsts,
    heads: alike.heads.firsts,
  };
  /** For a drive and a limiter, the heads that join, each by the first that is like it. */
  const joining = new Map<DriveModel, Map<OptionModel | null, Set<HeadModel>>>();
  const end = search(frameProblem(firsts, CONSTRAINTS), {
    visit: ([drive = null, limiter = null, head = null]) => {
      if (isDrive(drive) && isHead(head)) {
        const option = isOption(limiter) ? limiter : null;
        const ofDrive = joining.get(drive) ?? new Map<OptionModel | null, Set<HeadModel>>();
        joining.set(drive, ofDrive.set(option, (ofDrive.get(option) ?? new Set()).add(head)));
      }
      return 'go on';
    },
  });
  const frames: Frame[] = [];
  for (const drive of stock.drives) {
    const ofDrive = joining.get(alike.drives.firstOf(drive));
    for (const limiter of [null, ...stock.limiters]) {
      const heads = ofDrive?.get(limiter === null ? null : alike.limiters.firstOf(limiter));
      if (heads === undefined) continue;
      const under = limiter !== null && inLine(limiter, 'after head') ? limiter.facts.output : undefined;
      for (const head of stock.heads) {
        if (heads.has(alike.heads.firstOf(head)))
          frames.push({ drive, limiter, head, output: under ?? head.facts.output });
      }
    }
  }
  return {
    frames,
    matings: matingsOf(frames),
    chains: extensionChains(stock.extensions),
    evaluations: end.effort.evaluations,
  };
}

function matingsOf(frames: readonly Frame[]): readonly Mating[] {
  const byDrive = new Map<DriveModel, Map<HeadModel, { frame: Frame; position: number }[]>>();
  for (const [position, frame] of frames.entries()) {
    const ofDrive = byDrive.get(frame.drive) ?? new Map<HeadModel, { frame: Frame; position: number }[]>();
    byDrive.set(frame.drive, ofDrive);
    const uses = ofDrive.get(frame.head) ?? [];
    ofDrive.set(frame.head, uses);
    uses.push({ frame, position });
  }
  return [...byDrive].flatMap(([drive, ofDrive]) => [...ofDrive].map(([head, uses]) => ({ drive, head, uses })));
}

const couplingKey = (coupling: Coupling | undefined): string => (coupling === undefined ? '' : couplingText(coupling));

function groupAlike<Part>(
  parts: readonly Part[],
  key: (part: Part) => string,
): { readonly firsts: readonly Part[]; readonly firstOf: (part: Part) => Part } {
  const firsts = new Map<string, Part>();
  const firstOf = new Map<Part, Part>();
  for (const part of parts) {
    const first = firsts.get(key(part)) ?? part;
    firsts.set(key(part), first);
    firstOf.set(part, first);
  }
  return { firsts: [...firsts.values()], firstOf: (part) => firstOf.get(part) ?? part };
}
