/*
 * Ids of cores and slot alternatives: made of part numbers, so that they can be turned back into parts.
 * Invariant: reading an id gives exactly the parts it was made of.
 * Not here: figures.
 * Read next: ../parts-of.ts.
 */

import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Core } from '#lib/rules/facts.ts';
import type { Reaction } from '../chain/reactions.ts';

/** `D-1:0|H-2|L-3|S-5`: drive and gear, head, limiter, accessories. */
export function coreId(
  core: Pick<Core, 'drive' | 'gearIndex' | 'head' | 'limiter'>,
  accessories: readonly string[],
): string {
  return [
    `${core.drive.number}:${core.gearIndex}`,
    core.head.number,
    core.limiter?.number ?? '',
    accessories.join(','),
  ].join('|');
}

export interface CoreParts {
  readonly drive: string;
  readonly gear: number;
  readonly head: string;
  readonly options: readonly string[];
  readonly accessories: readonly string[];
}

export function readCoreId(id: string): CoreParts {
  const [source, head, options, accessories] = id.split('|');
  const [drive, gear] = (source ?? '').split(':');
  invariant(drive !== undefined && gear !== undefined && head !== undefined, `${id} is not the id of a core.`);
  return { drive, gear: Number(gear), head, options: list(options), accessories: list(accessories) };
}

/** `E-1>A-2,A-3|S-4*2`: elements with their extensions, accessories with counts. */
export function gripId(
  elements: readonly { readonly adapter: AdapterModel; readonly extensions: readonly ExtensionModel[] }[],
  accessories: readonly { readonly number: string; readonly count: number }[],
): string {
  const chains = elements.map(({ adapter, extensions }) =>
    [...extensions.map((extension) => extension.number), adapter.number].join('>'),
  );
  return `${chains.join(',')}|${accessories.map(({ number, count }) => `${number}*${count}`).join(',')}`;
}

export interface GripParts {
  readonly elements: readonly { readonly adapter: string; readonly extensions: readonly string[] }[];
  readonly accessories: readonly { readonly number: string; readonly count: number }[];
}

export function readGripId(id: string): GripParts {
  const [chains, accessories] = id.split('|');
  return {
    elements: list(chains).map((chain) => {
      const numbers = chain.split('>');
      return { adapter: numbers.at(-1) ?? '', extensions: numbers.slice(0, -1) };
    }),
    accessories: list(accessories).map((text) => {
      const [number = '', count = '1'] = text.split('*');
      return { number, count: Number(count) };
    }),
  };
}

export function reactionId({ restraint, secondChain }: Reaction): string {
  return secondChain === null ? restraint.number : `${restraint.number}+${secondChain.number}`;
}

export function readReactionId(id: string): { readonly restraint: string; readonly secondChain: string | null } {
  const [restraint = '', secondChain] = id.split('+');
  return { restraint, secondChain: secondChain ?? null };
}

function list(text: string | undefined): readonly string[] {
  return text === undefined || text === '' ? [] : text.split(',');
}
