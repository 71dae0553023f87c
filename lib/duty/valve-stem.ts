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
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { combine, lookUp, type Sheet, term } from './sheet.ts';
import { leadOf, usualPitch } from './stem-lead.ts';
import { threadAcross } from './thread-diameters.ts';
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
      value: shareOf(sheet, {
        name: 'travel against nominal size',
        of: 'nominal size',
        base: loads.size,
        share: TRAVELS[character.family],
        source: 'Travel by nominal size and type; common practice, no source.',
      }),
    });
  const form = thread?.value.form ?? 'trapezoidal';
  const majorDiameter =
    thread === undefined
      ? shareOf(sheet, {
          name: 'thread against stem diameter',
          of: 'stem diameter',
          base: diameter,
          share: [0.94, 1, 1],
          source: 'Outside of the thread against the stem; common practice, no source.',
        })
      : exactly('m', thread.value.majorDiameter_m, thread);
  const pitch = thread === undefined ? usualPitch(sheet, majorDiameter) : exactly('m', thread.value.pitch_m, thread);
  const lead = leadOf({ ...given, travel, majorDiameter, pitch });
  const origin: Origin = thread ?? {
    basis: worstBasis([majorDiameter.basis, 'rule of thumb']),
    source: 'From the usual trapezoidal thread of this size (ISO 2902, ISO 2904).',
  };
  const across = { majorDiameter, pitch, origin };
  return {
    form,
    diameter,
    majorDiameter,
    travel,
    lead,
    meanDiameter: lookUp(sheet, {
      id: 'mean-diameter',
      name: 'Mean diameter of the thread',
      value: threadAcross(sheet, { ...across, size: threadMeanDiameter }),
    }),
    rootDiameter: lookUp(sheet, {
      id: 'root-diameter',
      name: 'Root diameter of the thread',
      value: threadAcross(sheet, { ...across, size: (at) => threadRootDiameter({ form, ...at }) }),
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

function stemBySize(given: Given): Known<'m'> {
  const { character, loads, sheet } = given;
  const { size, rated } = loads;
  const against = 'stem against what is usual for the size';
  if (character.family === 'penstock') {
    const origin: Origin = { basis: 'assumed', source: 'Stem of a penstock by its size; common practice, no source.' };
    return combine(sheet, {
      unit: 'm',
      origin,
      terms: {
        size: term('D', 'nominal size', size),
        share: term('k', against, spreadOf('1', [0.85, 1, 1.2], origin)),
      },
      evaluate: (at) => (0.025 + 0.045 * at('size')) * at('share'),
    });
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
  const origin: Origin = asStandard
    ? {
        basis: 'standard',
        source: 'Least stem diameter by size, API Std 600 (secondary source; class 150), up to 15 % more.',
      }
    : {
        basis: size.basis === 'assumed' ? 'assumed' : 'rule of thumb',
        source: 'Stem diameter by size and rating, after the class 150 stems of API Std 600 (part from memory).',
      };
  const [least, likely, most] = share;
  return combine(sheet, {
    unit: 'm',
    origin,
    terms: {
      size: term('D', 'nominal size', size),
      rated: term('p', 'rated pressure', rated),
      share: term('k', against, spreadOf('1', [asStandard ? 1 : least, likely, most], origin)),
    },
    evaluate: (at) =>
      (between({ points: GATE_STEMS_MM, x: at('size') * 1000 }) / 1000) *
      (character.setting === 'plant' ? between({ points: STEM_GROWTH_BY_BAR, x: at('rated') / 1e5 }) : 1) *
      at('share'),
  });
}

function collarOf({
  line,
  character,
  loads,
  sheet,
  diameter,
}: Given & { readonly diameter: Known<'m'> }): ValveStem['collar'] {
  if (character.stemKind.value === 'rising with the wheel') return null;
  const meanDiameter =
    line.stem.collarMeanDiameter ??
    combine(sheet, {
      unit: 'm',
      origin: { basis: worstBasis([diameter.basis, 'rule of thumb']), source: HOUSE_CONSTANTS.collarShare.source },
      terms: {
        diameter: term('d', 'stem diameter', diameter),
        share: term('k', 'collar against stem', HOUSE_CONSTANTS.collarShare),
      },
      evaluate: (at) => at('diameter') * at('share'),
    });
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
