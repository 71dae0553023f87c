/*
 * Finds the models that an assembly's part numbers name, and puts them together as a chain on a line.
 * Invariant: a number that is unknown or of another role is a programmer's error.
 * Not here: whether any rule objects.
 * Read next: build-assembly.ts.
 */
import type { AssemblyParts } from '#lib/equipment/assembly.ts';
import type { AccessoryModel, Model, Role } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { LineFacts, WholeFacts } from '#lib/rules/facts.ts';
import type { NewtonMetres } from '#lib/units/quantity.ts';
import { reactionFigures } from './chain/reactions.ts';
import { torqueCap } from './chain/torque-cap.ts';
import { coreFigures } from './cores/core-figures.ts';

export interface ResolvedChain {
  readonly whole: WholeFacts;
  /** Up to where the limiter may be set for the sake of the parts. */
  readonly limiterUpTo: NewtonMetres;
  readonly accessories: readonly { readonly model: AccessoryModel; readonly count: number }[];
}

type ModelOf<R extends Role> = Extract<Model, { readonly role: R }>;

const isOfRole = <R extends Role>(model: Model | undefined, role: R): model is ModelOf<R> => model?.role === role;

export function resolveParts(at: {
  readonly facts: LineFacts;
  readonly models: readonly Model[];
  readonly parts: AssemblyParts;
}): ResolvedChain {
  const { facts, parts } = at;
  const find = <R extends Role>(number: string, role: R): ModelOf<R> => {
    const model = at.models.find((one) => one.number === number);
    invariant(isOfRole(model, role), `The catalogue has no ${role} ${number}.`);
    return model;
  };
  const drive = find(parts.drive, 'drive');
  const head = find(parts.head, 'head');
  const options = parts.options.map((number) => find(number, 'option'));
  const limiter = options.find((option) => option.facts.kind === 'torque limiter') ?? null;
  const counter = options.find((option) => option.facts.kind === 'turns counter') ?? null;
  const gear = drive.facts.gears[parts.gear];
  invariant(gear !== undefined, `Drive ${drive.number} has no gear ${parts.gear}.`);
  const links = parts.adapters.map((number, index) => ({
    adapter: find(number, 'adapter'),
    extensions: (parts.adapterExtensions?.[index] ?? parts.extensions).map((extension) => find(extension, 'extension')),
  }));
  const restraint = find(parts.restraint, 'restraint');
  const limiterUpTo = torqueCap({ drive, head, links, restraint, facts });
  const frame = { drive, limiter, head, output: head.facts.output };
  const figures = coreFigures({ facts, frame, gearIndex: parts.gear, limiterUpTo });
  const core = { drive, gear, gearIndex: parts.gear, limiter, head, counter, figures };
  const accessories = parts.accessories.map(({ number, count }) => ({ model: find(number, 'accessory'), count }));
  return {
    limiterUpTo,
    whole: {
      ...facts,
      core,
      restraint,
      secondChain: accessories.find(({ model }) => model.facts.kind === 'second chain')?.model ?? null,
      reaction: reactionFigures({ core, restraint }),
      links,
    },
    accessories,
  };
}
