import type { DrivenBy, ScheduleLine, ValveType } from '#lib/duty/schedule-line.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import { known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { lineOf, SAID, say, sayFact, tr } from '#tests/support/lists/duty-lines.ts';

const TYPES: readonly (ValveType | undefined)[] = [
  'gate',
  'gate',
  'wedge gate',
  'flexible wedge gate',
  'double disc gate',
  'parallel slide gate',
  'knife gate',
  'globe',
  'penstock',
  'diaphragm',
  'pinch',
  'butterfly',
  'butterfly',
  'ball',
  'plug',
  'hydrant',
  'stop tap',
  undefined,
];
const SIZES_M = [0.05, 0.08, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1] as const;
const DRIVES: readonly DrivenBy[] = ['handwheel', 'nut', 'key cap', 'gearbox wheel', 'pillar', 'extension spindle'];
const THREADS = [tr(24, 5), tr(32, 6), tr(36, 6), tr(44, 7), tr(60, 9)] as const;

/** Lines as customers' lists have them: a size nearly always, little else for certain, some values as ranges. */
export function plausibleLines({ count, seed }: { readonly count: number; readonly seed: number }): ScheduleLine[] {
  const random = seededRandom(seed);
  const one = <Value>(values: readonly Value[]): Value | undefined => values[Math.floor(random() * values.length)];
  const may = (chance: number): boolean => random() < chance;
  const about = <U extends Unit>(unit: U, low: number, high: number) => {
    const value = low + (high - low) * random();
    return may(0.7) ? say(unit, value) : known(unit, { low: value * 0.85, nominal: value, high: value * 1.2 }, SAID);
  };
  const given = <Key extends string, Value>(chance: number, key: Key, value: () => Value | undefined) => {
    const made = may(chance) ? value() : undefined;
    return made === undefined ? {} : ({ [key]: made } as Record<Key, Value>);
  };
  return Array.from({ length: count }, (_, index) => {
    const type = one(TYPES);
    return lineOf({
      tag: `V${index + 1}`,
      ...(type === undefined ? {} : { valveType: sayFact(type) }),
      ...given(0.95, 'size', () => say('m', one(SIZES_M) ?? 0.1)),
      ...given(0.6, 'rating', () => sayFact(one(['PN 10', 'PN 16', 'Class 150', 'Class 300']) ?? 'PN 16')),
      process: {
        ...given(0.4, 'linePressure', () => about('Pa', 2e5, 16e5)),
        ...given(0.3, 'differentialPressure', () => about('Pa', 1e5, 12e5)),
        ...given(0.3, 'flowing', () => sayFact(may(0.5) ? ('flowing' as const) : ('still' as const))),
      },
      state: {
        ...given(0.3, 'condition', () => sayFact(may(0.7) ? ('free' as const) : ('stiff' as const))),
        ...given(0.3, 'age', () => sayFact(Math.floor(random() * 60))),
      },
      stem: {
        ...given(0.15, 'thread', () => one(THREADS)),
        ...given(0.15, 'diameter', () => about('m', 0.02, 0.07)),
        ...given(0.1, 'threadFriction', () => about('1', 0.1, 0.2)),
      },
      torque: {
        ...given(0.35, 'turns', () => say('turn', Math.round(8 + random() * 90))),
        ...given(0.1, 'starting', () => about('N·m', 30, 300)),
        ...given(0.15, 'max', () => about('N·m', 100, 500)),
      },
      interface: {
        ...given(0.6, 'drivenBy', () => sayFact(one(DRIVES) ?? 'handwheel')),
        ...given(0.25, 'wheelDiameter', () => about('m', 0.2, 0.7)),
      },
      place: { ...given(0.3, 'depthToNut', () => about('m', 0.4, 2)) },
    });
  });
}
