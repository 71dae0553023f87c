/*
 * Reads what a remark says besides sizes: cover, chamber, sight, use, several valves, a missing wheel, condition.
 * Invariant: the remark itself is always kept as notes; what is read from it says so in its source.
 * Not here: sizes (remark-sizes.ts) and kinds (recognise-kind.ts).
 * Read next: read-line.ts.
 */
import type { ValveCondition } from '#lib/duty/schedule-line.ts';
import { plainText } from './plain-text.ts';
import { type Recognised, recogniseKind } from './recognise-kind.ts';
import { type RemarkSize, remarkSizes } from './remark-sizes.ts';
import { remember } from './remember.ts';

export interface Remark {
  readonly text: string;
  readonly sizes: readonly RemarkSize[];
  readonly kind: Recognised | null;
  readonly surface?: string;
  readonly surfaceBox?: string;
  readonly condition?: ValveCondition;
  readonly outOfUse?: string;
  readonly severalValves?: string;
  readonly wheelMissing?: string;
}

const SURFACES: readonly (readonly [pattern: RegExp, surface: string])[] = [
  [/tarr?(?:ed|mac)?\b|asphalt|bitum|\broad/, 'tarred road'],
  [/concrete/, 'concrete'],
  [/pavement|paving|pavers|slab/, 'pavement'],
  [/sand/, 'sand'],
  [/grass|lawn/, 'grass'],
  [/gravel/, 'gravel'],
  [/soil|earth|mud/, 'soil'],
  [/debri/, 'debris'],
];
const BURIED = /\bburied|\bburried|\bunder(?:ground| )/;
const COVERED = /\bco.?ered|\bcovered|encase/;

const BOX_STATES: readonly (readonly [pattern: RegExp, state: string])[] = [
  [/flooded|full of water|under water|water ?logged/, 'flooded chamber'],
  [/chamber ?full|full ?of ?debri|silted|filled with/, 'chamber full of debris'],
  [/broken chamber|chamber (?:is )?broken|damaged chamber/, 'broken chamber'],
  [/without chamber|no chamber/, 'no chamber'],
  [/enc?h?ro\w*ch|enchro\w+|built over|build over/, 'built over'],
  [/no(?:t)? access|inaccess/, 'not accessible'],
  [/\b(?:not?|can ?not|cant|can't)\b[^;.]{0,14}(?:\bvis\w*|\bseen)|invisible|not found|cannot locate/, 'not visible'],
  [/\bchamber/, 'chamber'],
];

const OUT_OF_USE =
  /abandon\w*|not in use|disused|decommission\w*|out of (?:use|service)|not functional|functional: ?0(?:\.0)?\b|\bremoved\b/;
const SEVERAL =
  /\b(?:two|three|four|five|all three|both|[2-9])\s*(?:gate |butterfly )?(?:valves|valve\b(?! on)|vavles?)|valve on each side|\b[2-9]\s*(?:pics|pcs|pieces|nos)\b/;
const NO_WHEEL =
  /without (?:a )?(?:steer\w*|hand ?wheel|wheel|handle)|no (?:hand ?)?wheel|wheel (?:is )?missing|missing (?:hand ?)?wheel/;
const SEIZED = /seiz|\bstuck|jammed|can ?not be (?:opened|closed|turned|operated)|\bfrozen/;
const STIFF = /\bstiff|hard to (?:turn|open|close|operate)|difficult to (?:turn|open|close|operate)/;

export function readRemark(notes: string | undefined): Remark | null {
  return notes === undefined || notes.trim() === '' ? null : readText(notes);
}

const readText = remember((notes: string): Remark => {
  const plain = plainText(notes);
  const surface = surfaceIn(plain);
  const box = boxIn({ plain, surface });
  const condition = SEIZED.test(plain) ? 'seized' : STIFF.test(plain) ? 'stiff' : undefined;
  return {
    text: notes.trim(),
    sizes: remarkSizes(notes),
    kind: kindIn(notes),
    ...(surface === undefined ? {} : { surface }),
    ...(box === undefined ? {} : { surfaceBox: box }),
    ...(condition === undefined ? {} : { condition }),
    ...found('outOfUse', OUT_OF_USE.exec(plain)),
    ...found('severalValves', SEVERAL.exec(plain)),
    ...found('wheelMissing', NO_WHEEL.exec(plain)),
  };
});

/** What a change of use made of it: `Air valve converted to distribution valve`. */
export function convertedKind(notes: string | undefined): Recognised | null {
  const tail = /convert\w*\s+(?:in)?to\s+(?:a\s+|an\s+)?(.+)$/i.exec(notes ?? '')?.[1];
  return tail === undefined ? null : recogniseKind(tail);
}

/** Fragments with a label (`status: …`) come from other columns and say nothing of the kind. */
function kindIn(notes: string): Recognised | null {
  const spoken = notes.split(/;\s+/).filter((fragment) => !/^[^:]{1,24}:\s/.test(fragment));
  return convertedKind(spoken.join('; ')) ?? recogniseKind(spoken.join('; '));
}

function surfaceIn(plain: string): string | undefined {
  if (!BURIED.test(plain) && !COVERED.test(plain)) return undefined;
  return SURFACES.find(([pattern]) => pattern.test(plain))?.[1];
}

function boxIn(parts: { readonly plain: string; readonly surface: string | undefined }): string | undefined {
  const { plain, surface } = parts;
  if (BURIED.test(plain)) return 'buried';
  if (COVERED.test(plain)) return surface === undefined ? 'covered' : `covered by ${surface}`;
  return BOX_STATES.find(([pattern]) => pattern.test(plain))?.[1];
}

function found<Key extends 'outOfUse' | 'severalValves' | 'wheelMissing'>(
  key: Key,
  match: RegExpExecArray | null,
): Partial<Record<Key, string>> {
  const entry: Partial<Record<Key, string>> = {};
  if (match) entry[key] = match[0];
  return entry;
}
