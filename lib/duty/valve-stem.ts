/*
 * Stem, thread and collar of a valve: from the line, else from tables by size and rating.
 * Invariant: lead = pitch × starts; a conflict between two sources of starts or turns stays visible as a finding.
 * Not here: the torque that follows (screw-duty.ts).
 * Read next: screw-duty.ts.
 */
import { between } from '#lib/engineering/straight-lines.ts';
import {
  flankHalfAngle,
  type ThreadForm,
  threadMeanDiameter,
  threadRootDiameter,
} from '#lib/engineering/thread-geometry.ts';
import {
  GATE_STEMS_MM,
  GATE_STEMS_STANDARD_UP_TO_MM,
  type Spread,
  STEM_GROWTH_BY_BAR,
} from '#lib/engineering/valve-tables.ts';
import { basisRank, exactly, type Known, type Origin, worstBasis } from '#lib/units/known-value.ts';
import { metres } from '#lib/units/quantity.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { lookUp, type Sheet, settle } from './sheet.ts';
import { leadOf, usualPitch } from './stem-lead.ts';
import type { ValveCharacter } from './valve-character.ts';
import { shareOf, spreadOf, type ValveLoads } from './valve-loads.ts';

export interface ValveStem {
  readonly form: ThreadForm;
  readonly diameter: Known<'m'>;
  readonly majorDiameter: Known<'m'>;
  readonly meanDiameter: Known<'m'>;
  readonly rootDiameter: Known<'m'>;
  readonly lead: Known<'m'>;
  readonly flankHalfAngle: Known<'°'>;
  readonly friction: Known<'1'>;
  /** Null where nothing turns against a shoulder under thrust. */
  readonly collar: { readonly friction: Known<'1'>; readonly meanDiameter: Known<'m'> } | null;
  /** Whether any of stem diameter and thread was given or comes from a standard. */
  readonly grounded: boolean;
  readonly travel: Known<'m'>;
}

interface Given {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly sheet: Sheet;
}

const TRAVELS: Readonly<Record<ValveCharacter['family'], Spread>> = {
  gate: [1.0, 1.06, 1.15],
  globe: [0.22, 0.3, 0.4],
  squeeze: [0.45, 0.6, 0.9],
  penstock: [1.0, 1.03, 1.1],
  'quarter turn': [1, 1, 1],
  keyed: [0.2, 0.3, 0.5],
};

export function valveStem(given: Given): ValveStem {
  const { line, character, loads, sheet } = given;
  const thread = line.stem.thread;
  const diameter =
    line.stem.diameter ??
    (thread === undefined
      ? lookUp(sheet, { id: 'stem-diameter', name: 'Stem diameter', value: stemBySize(given) })
      : exactly('m', thread.value.majorDiameter_m, thread));
  const travel =
    line.stem.travel ??
    lookUp(sheet, {
      id: 'travel',
      name: 'Travel',
      value: shareOf(
        loads.size,
        TRAVELS[character.family],
        'Travel by nominal size and type; common practice, no source.',
      ),
    });
  const form = thread?.value.form ?? 'trapezoidal';
  const majorDiameter =
    thread === undefined
      ? shareOf(diameter, [0.94, 1, 1], 'Outside of the thread against the stem; common practice, no source.')
      : exactly('m', thread.value.majorDiameter_m, thread);
  const pitch = thread === undefined ? usualPitch(majorDiameter) : exactly('m', thread.value.pitch_m, thread);
  const lead = leadOf({ ...given, travel, majorDiameter, pitch });
  const origin: Origin = thread ?? {
    basis: worstBasis([majorDiameter.basis, 'rule of thumb']),
    source: 'From the usual trapezoidal thread of this size (ISO 2902, ISO 2904).',
  };
  const across = (
    size: (at: { majorDiameter: ReturnType<typeof metres>; pitch: ReturnType<typeof metres> }) => number,
  ): Known<'m'> =>
    settle(
      'm',
      {
        low: size({ majorDiameter: metres(majorDiameter.low), pitch: metres(pitch.low) }),
        nominal: size({ majorDiameter: metres(majorDiameter.nominal), pitch: metres(pitch.nominal) }),
        high: size({ majorDiameter: metres(majorDiameter.high), pitch: metres(pitch.high) }),
      },
      origin,
    );
  return {
    form,
    diameter,
    majorDiameter,
    travel,
    lead,
    meanDiameter: lookUp(sheet, {
      id: 'mean-diameter',
      name: 'Mean diameter of the thread',
      value: across(threadMeanDiameter),
    }),
    rootDiameter: lookUp(sheet, {
      id: 'root-diameter',
      name: 'Root diameter of the thread',
      value: across((at) => threadRootDiameter({ form, ...at })),
    }),
    flankHalfAngle: exactly(
      '°',
      flankHalfAngle(form),
      thread ?? { basis: 'rule of thumb', source: 'Trapezoidal thread taken (ISO 2901).' },
    ),
    friction: line.stem.threadFriction ?? HOUSE_CONSTANTS.threadFriction,
    collar: collarOf({ ...given, diameter }),
    grounded: basisRank(diameter.basis) <= basisRank('standard') || thread !== undefined,
  };
}

function stemBySize({ character, loads }: Given): Known<'m'> {
  const { size, rated } = loads;
  if (character.family === 'penstock') {
    const at = (dn: number, factor: number): number => (0.025 + 0.045 * dn) * factor;
    return settle(
      'm',
      { low: at(size.low, 0.85), nominal: at(size.nominal, 1), high: at(size.high, 1.2) },
      { basis: 'assumed', source: 'Stem of a penstock by its size; common practice, no source.' },
    );
  }
  const share: Spread =
    character.family === 'globe'
      ? [0.85, 1, 1.15]
      : character.family === 'squeeze'
        ? [0.75, 0.9, 1.1]
        : character.setting === 'plant'
          ? [0.97, 1.03, 1.12]
          : [0.92, 1, 1.1];
  const asStandard =
    character.setting === 'plant' &&
    character.family === 'gate' &&
    size.low === size.high &&
    size.high * 1000 <= GATE_STEMS_STANDARD_UP_TO_MM &&
    rated.high <= 20e5;
  const at = (dn: number, pressure: number, factor: number): number =>
    (between({ points: GATE_STEMS_MM, x: dn * 1000 }) / 1000) *
    (character.setting === 'plant' ? between({ points: STEM_GROWTH_BY_BAR, x: pressure / 1e5 }) : 1) *
    factor;
  const range = {
    low: at(size.low, rated.low, asStandard ? 1 : share[0]),
    nominal: at(size.nominal, rated.nominal, share[1]),
    high: at(size.high, rated.high, share[2]),
  };
  if (asStandard)
    return settle('m', range, {
      basis: 'standard',
      source: 'Least stem diameter by size, API Std 600 (secondary source; class 150), up to 15 % more.',
    });
  const basis = size.basis === 'assumed' ? 'assumed' : 'rule of thumb';
  return settle('m', range, {
    basis,
    source: 'Stem diameter by size and rating, after the class 150 stems of API Std 600 (part from memory).',
  });
}

function collarOf({
  line,
  character,
  loads,
  diameter,
}: Given & { readonly diameter: Known<'m'> }): ValveStem['collar'] {
  if (character.stemKind.value === 'rising with the wheel') return null;
  const meanDiameter =
    line.stem.collarMeanDiameter ??
    settle(
      'm',
      {
        low: diameter.low * HOUSE_CONSTANTS.collarShare.low,
        nominal: diameter.nominal * HOUSE_CONSTANTS.collarShare.nominal,
        high: diameter.high * HOUSE_CONSTANTS.collarShare.high,
      },
      { basis: worstBasis([diameter.basis, 'rule of thumb']), source: HOUSE_CONSTANTS.collarShare.source },
    );
  return { friction: line.stem.collarFriction ?? collarFriction({ line, character, loads }), meanDiameter };
}

function collarFriction({ line, character, loads }: Pick<Given, 'line' | 'character' | 'loads'>): Known<'1'> {
  const bearing = line.stem.collarBearing?.value;
  if (bearing === 'rolling') return HOUSE_CONSTANTS.rollingCollarFriction;
  if (bearing === 'plain') return HOUSE_CONSTANTS.collarFriction;
  const mayRoll = character.family === 'penstock' || (character.setting === 'plant' && loads.size.high >= 0.3);
  if (!mayRoll) return HOUSE_CONSTANTS.collarFriction;
  return spreadOf('1', [HOUSE_CONSTANTS.rollingCollarFriction.nominal, 0.08, HOUSE_CONSTANTS.collarFriction.high], {
    basis: 'assumed',
    source: 'Whether the yoke nut runs on a plain shoulder or on rolling bearings is not given; both are covered.',
  });
}
