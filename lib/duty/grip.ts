/*
 * What a drive must grip, reach and clear at this valve, with ranges where the list says nothing.
 * Invariant: every range covers what national practice usually brings; known sizes stay single.
 * Not here: which adapter fits (rules, kits).
 * Read next: assess-duty.ts.
 */
import { BURIED_NUTS, GEARBOX_NUTS, HYDRANT_NUTS, STOP_TAP_NUTS, type UsualNut } from '#lib/engineering/nut-sizes.ts';
import { between } from '#lib/engineering/straight-lines.ts';
import { WHEELS_MM } from '#lib/engineering/valve-tables.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import type { Grip } from './duty.ts';
import { gearWheel } from './geared-duty.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { settle } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import { spreadOf, type ValveLoads } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

interface GripGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly stem: ValveStem | null;
}

/** A wheel guessed by size is no finer than this; common practice, no source. */
const WHEEL_STEP_MM = 5;

/** The wheel of the valve: stated, else by size; null where a nut, square or key is turned. */
export function wheelOf({ line, character, loads }: Omit<GripGiven, 'stem'>): Known<'m'> | null {
  const drive = character.drivenBy.value;
  if (drive !== 'handwheel' && drive !== 'gearbox wheel' && drive !== 'pillar') return null;
  if (line.interface.wheelDiameter !== undefined) return line.interface.wheelDiameter;
  if (drive === 'gearbox wheel') return gearWheel(loads);
  const at = (size: number, factor: number): number =>
    (Math.round((between({ points: WHEELS_MM, x: size * 1000 }) * factor) / WHEEL_STEP_MM) * WHEEL_STEP_MM) / 1000;
  const basis = loads.size.basis === 'assumed' ? 'assumed' : 'rule of thumb';
  return settle(
    'm',
    { low: at(loads.size.low, 0.75), nominal: at(loads.size.nominal, 1), high: at(loads.size.high, 1.3) },
    { basis, source: 'Handwheel by size of valve; common practice, no source.' },
  );
}

export function gripOf(given: GripGiven): Grip {
  const { line, character, stem } = given;
  const drive = character.drivenBy.value;
  const rises = risesThrough(given);
  const shared = {
    wheelRises: wheelRises(given),
    stemRisesThroughWheel: rises,
    ...(rises === 'no' ? {} : protrusion(given)),
    ...(stem === null ? {} : { stemDiameter: stem.diameter, travel: stem.travel }),
  };
  switch (drive) {
    case 'handwheel':
    case 'gearbox wheel':
      return { kind: 'wheel', ...wheelFacts(given), ...shared };
    case 'pillar':
      return line.interface.nut === undefined
        ? {
            kind: 'wheel',
            remark:
              'A pillar: its wheel or crank is taken; say whether the crank comes off and what square is under it.',
            ...wheelFacts(given),
            ...shared,
          }
        : { kind: 'nut', ...nutFacts(given), ...shared };
    case 'nut':
    case 'square':
    case 'key cap':
    case 'gearbox nut':
    case 'extension spindle':
      return { kind: 'nut', ...nutFacts(given), ...shared };
    case 'chain wheel':
      return {
        kind: 'none',
        remark:
          'A chain wheel is pulled from below; nothing can sit on it. Take the chain off and say what is behind the wheel.',
        ...shared,
      };
    case 'actuator hand drive':
      return {
        kind: 'none',
        remark:
          'The hand drive belongs to another actuator: isolate and lock that actuator first, then follow its maker’s limits for its hand drive.',
        ...shared,
      };
  }
}

function wheelFacts(given: GripGiven): Partial<Grip> {
  const { line } = given;
  const diameter = wheelOf(given);
  const spokes = line.interface.wheelSpokes?.value;
  const sound =
    spokes !== undefined && Number.isFinite(spokes) && spokes >= 1 && spokes <= 24 ? Math.round(spokes) : undefined;
  const many = (diameter?.nominal ?? 0.3) > 0.5 ? { low: 4, high: 8 } : { low: 3, high: 6 };
  return {
    ...(diameter === null ? {} : { wheelDiameter: diameter }),
    wheelSpokes: sound === undefined ? many : { low: sound, high: sound },
    wheelDish:
      line.interface.wheelDish ??
      spreadOf('°', [0, 10, 20], {
        basis: 'assumed',
        source: 'The list gives no dish: a flat to a moderately dished wheel is covered.',
      }),
  };
}

function nutFacts(given: GripGiven): Partial<Grip> {
  const { line, character } = given;
  const usual = usualNuts(character, line);
  const shape = line.interface.nutShape?.value;
  const nut = line.interface.nut;
  const sizes = nut === undefined ? usual.map(asSize) : [nut.acrossFlats];
  const depth = line.place.depthToNut ?? unknownDepth(character);
  const spoken =
    shape ??
    (nut === undefined ? soleShape(usual) : nut.acrossFlatsAtBase === undefined ? undefined : 'tapered square');
  return {
    ...(spoken === undefined ? {} : { nutShape: spoken }),
    nutSizes: sizes,
    ...(depth === null ? {} : { depthToNut: depth }),
  };
}

function usualNuts({ type, drivenBy }: ValveCharacter, line: ScheduleLine): readonly UsualNut[] {
  if (type === 'hydrant') return HYDRANT_NUTS;
  if (type === 'stop tap') return STOP_TAP_NUTS;
  const all = drivenBy.value === 'gearbox nut' ? GEARBOX_NUTS : BURIED_NUTS;
  const shape = line.interface.nutShape?.value;
  const matching = all.filter((nut) => nut.shape === shape);
  return matching.length > 0 ? matching : all;
}

/** Sizes of several shapes leave the shape open. */
function soleShape(nuts: readonly UsualNut[]): string | undefined {
  const [first] = nuts;
  return first !== undefined && nuts.every(({ shape }) => shape === first.shape) ? first.shape : undefined;
}

function asSize({ acrossFlats_mm, source }: UsualNut): Known<'m'> {
  return exactly('m', acrossFlats_mm / 1000, {
    basis: 'assumed',
    source: `The list gives no nut size, so the common ones are covered: ${source}`,
  });
}

function unknownDepth({ buried, setting, drivenBy, type }: ValveCharacter): Known<'m'> | null {
  if (buried)
    return spreadOf('m', [0.75, 1, 1.35], {
      basis: 'assumed',
      source:
        'The list gives no depth: cover of 0.75 to 1.35 m is usual (UK water practice; main cover 0.7 to 1.1 m in North Shore City, IDSM 2009).',
    });
  if (setting === 'waterworks' && drivenBy.basis === 'assumed' && drivenBy.value !== 'gearbox nut') {
    const shallow = type === 'stop tap' || type === 'hydrant';
    return spreadOf('m', shallow ? [0.15, 0.6, 1] : [0.3, 0.9, 1.35], {
      basis: 'assumed',
      source: 'Whether the valve is buried is not given: a chamber or a usual cover is covered.',
    });
  }
  return null;
}

function risesThrough(given: GripGiven): 'yes' | 'no' | 'maybe' {
  const { character, line } = given;
  if (character.family === 'quarter turn' || character.family === 'keyed') return 'no';
  /** Beside a gearbox's input, or under a nut, no stem comes up. */
  if (character.geared || wheelOf(given) === null) return 'no';
  const { value, basis } = character.stemKind;
  const sure = basis !== 'assumed' || line.interface.stemProtrusion !== undefined;
  if (value === 'rising through the wheel') return sure ? 'yes' : 'maybe';
  if (sure) return 'no';
  const onWheel =
    character.drivenBy.value === 'handwheel' ||
    character.drivenBy.value === 'pillar' ||
    character.drivenBy.value === 'gearbox wheel';
  return onWheel && character.family !== 'globe' ? 'maybe' : 'no';
}

function wheelRises({ character }: GripGiven): 'yes' | 'no' | 'maybe' {
  if (character.family === 'quarter turn' || character.family === 'keyed' || character.geared) return 'no';
  const { value, basis } = character.stemKind;
  if (value === 'rising with the wheel') return basis === 'assumed' ? 'maybe' : 'yes';
  return basis === 'assumed' &&
    (character.family === 'globe' || character.family === 'squeeze') &&
    character.drivenBy.value === 'handwheel'
    ? 'maybe'
    : 'no';
}

/** How far the stem stands through the wheel at its farthest: where it was measured decides whether the travel comes on top. */
function protrusion({ line, stem }: GripGiven): { readonly stemProtrusion: Known<'m'> } | Record<string, never> {
  if (stem === null) return {};
  const { travel } = stem;
  const given = line.interface.stemProtrusion;
  if (given === undefined) {
    return {
      stemProtrusion: settle(
        'm',
        { low: travel.low * 0.9, nominal: travel.nominal + 0.04, high: travel.high + 0.12 },
        {
          basis: 'assumed',
          source: 'The list gives no protrusion: the travel and a little more is taken for the open valve.',
        },
      ),
    };
  }
  const at = line.interface.protrusionMeasuredAt?.value;
  if (at === 'open') return { stemProtrusion: given };
  const low = at === 'closed' ? given.low + travel.low : given.low;
  const source =
    at === 'closed'
      ? 'Measured at the closed valve: the travel comes on top.'
      : 'Whether it was measured open or closed is not given: the travel may come on top.';
  return {
    stemProtrusion: settle(
      'm',
      { low, nominal: given.nominal + travel.nominal, high: given.high + travel.high },
      { basis: at === 'closed' ? 'computed' : 'assumed', source },
    ),
  };
}
