/*
 * Cores of a catalogue that are alike in all but the head: one drive, gear and limiter behind heads of one kind and output.
 * Invariant: every frame in every gear is there once; numbers stand for what is the same from core to core, whatever the line.
 * Not here: what a line makes of them (core-table.ts).
 * Read next: core-table.ts.
 */
import type { DriveModel, HeadModel, OptionModel } from '#lib/equipment/model.ts';
import { couplingText } from '../grips/extension-chains.ts';
import { headKind } from './core-memo.ts';
import type { Frame, Frames } from './frames.ts';

/** A head that makes a core of those that are alike. */
export interface HeadAt {
  readonly frame: Frame;
  /** Where the core stands among all frames and gears. */
  readonly place: number;
  /** Number of the core. */
  readonly core: number;
  /** Number of drive and head, whatever is between them. */
  readonly mating: number;
}

export interface AlikeCores {
  readonly drive: DriveModel;
  readonly gearIndex: number;
  readonly limiter: OptionModel | null;
  /** The coupling, as text, of what joins the output. */
  readonly partner: string;
  /** By place. */
  readonly heads: readonly HeadAt[];
  /** The matings of the same heads. */
  readonly matings: readonly number[];
  /** Number of drive, gear and kind of head. */
  readonly mesh: number;
  /** Number of what limits it and where that sits. */
  readonly reach: number;
  /** Its own number. */
  readonly at: number;
}

export interface AllCores {
  readonly alike: readonly AlikeCores[];
  /** How many numbers of each sort there are. */
  readonly counts: Readonly<Record<'mesh' | 'reach' | 'core' | 'mating', number>>;
}

/** No drive has as many gears. */
const GEARS = 64;

const made = new WeakMap<Frames, AllCores>();

export function alikeCores(frames: Frames): AllCores {
  const known = made.get(frames) ?? makeAlike(frames);
  made.set(frames, known);
  return known;
}

interface Growing extends AlikeCores {
  readonly heads: HeadAt[];
  readonly matings: number[];
}

function makeAlike({ frames }: Frames): AllCores {
  const of = {
    model: numbering<DriveModel | OptionModel | HeadModel>(),
    mesh: numbering<string>(),
    reach: numbering<string>(),
    mating: numbering<string>(),
    group: numbering<string>(),
  };
  const alike: Growing[] = [];
  let cores = 0;
  for (const [position, frame] of frames.entries()) {
    const { drive, limiter, head } = frame;
    const kind = headKind(head);
    const partner = partnerOf(frame);
    const byDrive = of.model.numberOf(drive);
    const owner = limiter ?? (drive.facts.limiter === null ? null : drive);
    const reaches =
      owner === null ? '' : `${of.model.numberOf(owner)} ${limiter?.facts.sits === 'after head' ? '' : kind}`;
    const limitedBy = limiter === null ? '' : of.model.numberOf(limiter);
    const mating = of.mating.numberOf(`${byDrive} ${of.model.numberOf(head)}`);
    for (const gearIndex of drive.facts.gears.keys()) {
      const at = of.group.numberOf(`${byDrive} ${gearIndex} ${limitedBy} ${partner} ${kind}`);
      const { heads, matings }: Pick<Growing, 'heads' | 'matings'> = alike[at] ?? { heads: [], matings: [] };
      alike[at] ??= {
        ...{ drive, gearIndex, limiter, partner, heads, matings, at },
        mesh: of.mesh.numberOf(`${byDrive} ${gearIndex} ${kind}`),
        reach: of.reach.numberOf(reaches),
      };
      heads.push({ frame, place: position * GEARS + gearIndex, core: cores, mating });
      matings.push(mating);
      cores += 1;
    }
  }
  const counts = { mesh: of.mesh.count(), reach: of.reach.count(), core: cores, mating: of.mating.count() };
  return { alike, counts };
}

/** Those of the heads alone that are let through; null where none is. */
export function withHeads(one: AlikeCores, passes: (head: HeadModel) => boolean): AlikeCores | null {
  const heads = one.heads.filter(({ frame }) => passes(frame.head));
  if (heads.length === one.heads.length) return one;
  return heads.length === 0 ? null : { ...one, heads, matings: heads.map(({ mating }) => mating) };
}

function partnerOf({ output: { form, size, gender } }: Frame): string {
  return couplingText({ form, size, gender: gender === 'male' ? 'female' : 'male' });
}

function numbering<Key>(): { readonly numberOf: (key: Key) => number; readonly count: () => number } {
  const numbers = new Map<Key, number>();
  return {
    numberOf: (key) => {
      const known = numbers.get(key) ?? numbers.size;
      numbers.set(key, known);
      return known;
    },
    count: () => numbers.size,
  };
}
