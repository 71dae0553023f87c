/*
 * Puts the parts that an assembly names back together: who stands where from the drive to the valve, and the torque factor between.
 * Invariant: a part that is missing, unknown or of another role is a discrepancy, and then there is no chain.
 * Not here: whether the chain is any good (check-chain.ts).
 * Read next: check-chain.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { BuiltInLimiter, Gear } from '#lib/equipment/drive.ts';
import type {
  AccessoryModel,
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  Model,
  OptionModel,
  RestraintModel,
  Role,
} from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { newtonMetres } from '#lib/units/quantity.ts';
import { type Discrepancy, told } from './discrepancy.ts';

export interface AssemblyFacts {
  readonly lineDuty: { readonly line: ScheduleLine; readonly duty: Duty };
  readonly site: Site;
  readonly models: readonly Model[];
  readonly assembly: Assembly;
}

/** A limiter as it stands in the chain, with the torque factor from its place to the valve. */
export interface PlacedLimiter extends BuiltInLimiter {
  readonly number: string;
  readonly factor: { readonly low: number; readonly high: number };
}

export interface Chain {
  readonly drive: DriveModel;
  readonly gear: Gear;
  readonly head: HeadModel;
  readonly extensions: readonly ExtensionModel[];
  /** Each adapter with the extensions before it: a covering set may put them behind different ones. */
  readonly links: readonly { readonly adapter: AdapterModel; readonly extensions: readonly ExtensionModel[] }[];
  readonly adapters: readonly AdapterModel[];
  readonly restraint: RestraintModel;
  readonly options: readonly OptionModel[];
  readonly counter: OptionModel | null;
  readonly limiter: PlacedLimiter | null;
  readonly accessories: readonly { readonly model: AccessoryModel; readonly count: number }[];
  /** Torque factor of the head, and of a joint behind it at its worst and best moment. */
  readonly factor: { readonly low: number; readonly high: number };
  /** Cosine of the angle that a joint works at; 1 where there is none. */
  readonly ripple: number;
}

/** Facts, and the chain that was put together from them. */
export interface Subject extends AssemblyFacts {
  readonly chain: Chain;
}

export function putTogether(facts: AssemblyFacts): {
  readonly chain: Chain | null;
  readonly missing: readonly Discrepancy[];
} {
  const { parts } = facts.assembly;
  const missing: Discrepancy[] = [];
  const find = finder(facts.models, missing);
  const drive = find(parts.drive, 'drive');
  const head = find(parts.head, 'head');
  const restraint = find(parts.restraint, 'restraint');
  const extensions = parts.extensions.map((number) => find(number, 'extension')).filter((part) => part !== null);
  const adapters = parts.adapters.map((number) => find(number, 'adapter')).filter((part) => part !== null);
  const links = adapters.map((adapter, index) => ({
    adapter,
    extensions: (parts.adapterExtensions?.[index] ?? parts.extensions)
      .map((number) => find(number, 'extension'))
      .filter((part) => part !== null),
  }));
  const options = parts.options.map((number) => find(number, 'option')).filter((part) => part !== null);
  const accessories = parts.accessories.flatMap(({ number, count }) => {
    const model = find(number, 'accessory');
    return model === null ? [] : [{ model, count }];
  });
  const gear = drive?.facts.gears[parts.gear];
  if (drive !== null && gear === undefined) missing.push(noGear({ drive: parts.drive, gear: parts.gear }));
  if (parts.adapters.length === 0) missing.push(unknownPart({ number: 'none', role: 'adapter' }));
  if (drive === null || head === null || restraint === null || gear === undefined || missing.length > 0) {
    return { chain: null, missing };
  }
  const ripple = rippleOf(facts, links);
  const factor = {
    low: head.facts.ratio * head.facts.efficiency.low * ripple,
    high: (head.facts.ratio * head.facts.efficiency.high) / ripple,
  };
  const counter = options.find((option) => option.facts.kind === 'turns counter') ?? null;
  const limiter = limiterOf({ drive, options, factor, ripple });
  return {
    chain: {
      links,
      drive,
      gear,
      head,
      extensions,
      adapters,
      restraint,
      options,
      counter,
      limiter,
      accessories,
      factor,
      ripple,
    },
    missing,
  };
}

type ModelOf<R extends Role> = Extract<Model, { readonly role: R }>;

function isOfRole<R extends Role>(model: Model | undefined, role: R): model is ModelOf<R> {
  return model?.role === role;
}

function finder(models: readonly Model[], missing: Discrepancy[]) {
  return <R extends Role>(number: string, role: R): ModelOf<R> | null => {
    const model = models.find((one) => one.number === number);
    if (isOfRole(model, role)) return model;
    missing.push(unknownPart({ number, role }));
    return null;
  };
}

function unknownPart({ number, role }: { readonly number: string; readonly role: Role }): Discrepancy {
  return told({
    code: 'assembly-part-unknown',
    sentence: `The assembly names ${number} as its ${role}; the catalogue has no such ${role}.`,
    expected: `the number of a model whose role is ${role}`,
    found: number,
  });
}

function noGear({ drive, gear }: { readonly drive: string; readonly gear: number }): Discrepancy {
  return told({
    code: 'assembly-gear-unknown',
    sentence: `The assembly uses gear ${gear} of ${drive}, which that drive does not have.`,
    expected: 'the place of a gear in the list of the drive, from 0',
    found: gear,
  });
}

/** One joint takes up all that the line stands out of line. */
function rippleOf({ lineDuty }: AssemblyFacts, links: Chain['links']): number {
  const joints = links.flatMap(({ extensions }) => extensions).filter(({ facts }) => facts.kind === 'universal joint');
  const angle = Math.min(lineDuty.line.place.misalignment?.high ?? 0, WORKING_CONSTANTS.steepestJoint);
  return joints.length === 0 ? 1 : Math.cos((angle * Math.PI) / 180);
}

/** A limiter that is put in comes before one that is built in; under the head it feels the valve's own torque. */
function limiterOf(chain: {
  readonly drive: DriveModel;
  readonly options: readonly OptionModel[];
  readonly factor: { readonly low: number; readonly high: number };
  readonly ripple: number;
}): PlacedLimiter | null {
  const option = chain.options.find((one) => one.facts.kind === 'torque limiter');
  if (option === undefined) {
    const { limiter } = chain.drive.facts;
    return limiter === null ? null : { ...limiter, number: chain.drive.number, factor: chain.factor };
  }
  const { lowest, highest, error, overshoot, step, bothDirections, sits } = option.facts;
  if (lowest === undefined || highest === undefined || error === undefined) return null;
  if (step === undefined) return null;
  const factor = sits === 'after head' ? { low: chain.ripple, high: 1 / chain.ripple } : chain.factor;
  return {
    lowest,
    highest,
    error,
    overshoot: overshoot ?? newtonMetres(0),
    step,
    bothDirections: bothDirections ?? false,
    number: option.number,
    factor,
  };
}
