/*
 * The steps that the calculation sheet must show of shafts and keys with a stated section.
 * Invariant: of several links the one that winds up most is shown.
 * Not here: the arithmetic (shaft-figures.ts).
 * Read next: shaft-figures.ts.
 */
import type { Subject } from './chain.ts';
import { computed, type ExpectedStep, plate, practice } from './figure.ts';
import { highestAtValve } from './highest-torque.ts';
import { piecesOf, speedByLength, stressOf, twistOf, WHIRL_PART } from './shaft-figures.ts';

export function shaftSteps(subject: Subject): readonly ExpectedStep[] {
  const torque = highestAtValve(subject);
  const [pieces] = subject.chain.links
    .map(piecesOf)
    .filter((link) => link.length > 0)
    .toSorted((one, other) => twistOf(other, torque) - twistOf(one, torque));
  if (pieces === undefined) return [];
  const T = computed(torque, 'N·m');
  const twist = twistOf(pieces, torque);
  const sections = figures(
    pieces.flatMap(({ outer, inner }) => [outer, inner]),
    ['D', 'd'],
  );
  const lengths = figures(
    pieces.map(({ length }) => length),
    ['L'],
  );
  return [
    { id: 'shaft-stress', inputs: { T, ...sections }, result: computed(stressOf(pieces, torque), 'Pa') },
    { id: 'wind-up', inputs: { T, ...sections, ...lengths }, result: computed(twist, '°') },
    {
      id: 'stored-energy',
      inputs: { T, φ: computed(twist, '°') },
      result: computed((torque * twist * Math.PI) / 360, 'J'),
    },
    {
      id: 'whirl-limit',
      inputs: { x: practice(WHIRL_PART), ...sections, ...lengths },
      result: practice(speedByLength(pieces), '1/min'),
    },
  ];
}

/** Numbered by piece: of two letters each piece takes both. */
function figures(values: readonly number[], letters: readonly string[]): ExpectedStep['inputs'] {
  return Object.fromEntries(
    values.map((value, index) => [
      `${letters[index % letters.length]}${Math.floor(index / letters.length) + 1}`,
      plate(value, 'm'),
    ]),
  );
}
