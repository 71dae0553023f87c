/*
 * Counts and weighs what was packed for a crew a second time: every piece of its kit once, every case under its lift limit.
 * Invariant: masses, sizes and energies are those of the models and cases, never those that the packing says.
 * Not here: what transport law asks of a case (lib/packing) and which serial numbers are free (lib/stock).
 * Read next: discrepancy.ts.
 */
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { CaseSize, Model } from '#lib/equipment/model.ts';
import { atMost, type Discrepancy, holds, same } from './discrepancy.ts';

export interface PackingFacts {
  /** What the crew carries. */
  readonly items: readonly ItemNeed[];
  readonly models: readonly Model[];
  readonly liftLimit: number;
  readonly cases: readonly { readonly name: string; readonly size: CaseSize; readonly mass: number }[];
  readonly packed: readonly PackedFigures[];
}

export interface PackedFigures {
  readonly label: number;
  /** Name of the case, or `loose`. */
  readonly name: string;
  readonly pieces: readonly { readonly number: string; readonly serial: string | null }[];
  readonly mass: number;
  readonly lift: { readonly mark: string };
  readonly wattHours: number;
}

/** kg up to which each mark holds: HSE L23, filter of 16 and 25 kg for one person, two lift two thirds of the sum. */
const MARKS = [
  { upTo: 16, mark: 'one person' },
  { upTo: 25, mark: 'one person, near the limit' },
  { upTo: 100 / 3, mark: 'two persons' },
  { upTo: Number.POSITIVE_INFINITY, mark: 'lifting aid' },
] as const;

/** Share of the inside that shapes and foam leave. Common practice, no source. */
const FILL = 0.7;

export function checkPacking(facts: PackingFacts): readonly Discrepancy[] {
  return [
    ...checkPieces(facts),
    ...checkSerials(facts),
    ...facts.packed.flatMap((packed, index) => checkOne(facts, { packed, index })),
  ];
}

function checkPieces({ items, packed }: PackingFacts): readonly Discrepancy[] {
  const wanted = new Map<string, number>();
  for (const { item, count } of items) wanted.set(item, (wanted.get(item) ?? 0) + count);
  const found = new Map<string, number>();
  for (const { number } of packed.flatMap(({ pieces }) => pieces)) found.set(number, (found.get(number) ?? 0) + 1);
  return [...new Set([...wanted.keys(), ...found.keys()])].flatMap((number) =>
    same({
      code: (found.get(number) ?? 0) < (wanted.get(number) ?? 0) ? 'packing-piece-missing' : 'packing-piece-surplus',
      what: `What is packed of ${number}`,
      expected: wanted.get(number) ?? 0,
      found: found.get(number) ?? 0,
    }),
  );
}

function checkSerials({ packed }: PackingFacts): readonly Discrepancy[] {
  const units = packed
    .flatMap(({ pieces }) => pieces)
    .filter(({ serial }) => serial !== null)
    .map(({ number, serial }) => `${number} ${serial}`);
  const twice = units.filter((unit, index) => units.indexOf(unit) !== index);
  return holds(twice.length === 0, {
    code: 'packing-unit-twice',
    sentence: `A unit is packed twice: ${twice.join(', ')}.`,
    expected: 'each unit once',
    found: twice.join(', '),
  });
}

interface One {
  readonly packed: PackedFigures;
  readonly index: number;
}

function checkOne(facts: PackingFacts, { packed, index }: One): readonly Discrepancy[] {
  const box = facts.cases.find(({ name }) => name === packed.name);
  const inside = packed.pieces.flatMap(({ number }) => facts.models.find((model) => model.number === number) ?? []);
  const sum = (of: (model: Model) => number): number => inside.reduce((all, model) => all + of(model), 0);
  const mass = (box?.mass ?? 0) + sum((model) => model.mass);
  const name = `case ${packed.label}`;
  return [
    ...same({
      code: 'packing-label',
      what: `The label of the case at place ${index + 1}`,
      expected: index + 1,
      found: packed.label,
    }),
    ...same({ code: 'packing-mass', what: `The mass of ${name} in kg`, expected: mass, found: packed.mass }),
    ...same({
      code: 'packing-watt-hours',
      what: `The energy of the packs in ${name} in Wh`,
      expected: sum(({ lithium }) => (lithium === undefined ? 0 : lithium.energy * lithium.packs)),
      found: packed.wattHours,
    }),
    ...checkMark({ name, mass, mark: packed.lift.mark }),
    ...(box === undefined
      ? checkLoose(packed)
      : checkBox({ name, mass, inside, size: box.size, limit: limitFor(facts, inside) })),
  ];
}

/** Two lift a case that holds a piece which no case for one person takes. */
function limitFor({ liftLimit, cases }: PackingFacts, inside: readonly Model[]): number {
  const [, , two] = MARKS;
  const forOne = (model: Model): boolean =>
    cases.some(({ size, mass }) => {
      const room = edgesOf(size);
      return (
        mass + model.mass <= liftLimit + 1e-9 &&
        volumeOf(model.case) <= FILL * volumeOf(size) + 1e-9 &&
        edgesOf(model.case).every((edge, at) => edge <= (room[at] ?? 0) + 1e-9)
      );
    });
  return inside.every(forOne) ? liftLimit : Math.max(liftLimit, two.upTo);
}

function checkMark({
  name,
  mass,
  mark,
}: {
  readonly name: string;
  readonly mass: number;
  readonly mark: string;
}): readonly Discrepancy[] {
  /** Sums in another order differ by less than this; on the very edge either mark is right. */
  const dust = 1e-9;
  const [right, other] = [mass - dust, mass + dust].map((one) => MARKS.find(({ upTo }) => one <= upTo)?.mark ?? '');
  return holds(mark === right || mark === other, {
    code: 'packing-lift-mark',
    sentence: `The mark of ${name}, ${Math.round(mass * 10) / 10} kg, is “${right}”, not “${mark}”.`,
    expected: right ?? '',
    found: mark,
  });
}

function checkLoose({ name, pieces, label }: PackedFigures): readonly Discrepancy[] {
  return holds(name === 'loose' && pieces.length === 1, {
    code: 'packing-loose',
    sentence: `What is labelled ${label} is no case of the house, and not one loose piece either.`,
    expected: 'a case of the house, or one loose piece',
    found: `${name} with ${pieces.length} pieces`,
  });
}

function checkBox(box: {
  readonly name: string;
  readonly mass: number;
  readonly inside: readonly Model[];
  readonly size: CaseSize;
  readonly limit: number;
}): readonly Discrepancy[] {
  const room = edgesOf(box.size);
  const large = box.inside.filter((model) => edgesOf(model.case).some((edge, at) => edge > (room[at] ?? 0) + 1e-9));
  const filled = box.inside.reduce((sum, model) => sum + volumeOf(model.case), 0);
  return [
    ...atMost({
      code: 'packing-too-heavy',
      what: `The mass of ${box.name} in kg`,
      expected: box.limit,
      found: box.mass,
    }),
    ...holds(large.length === 0 && filled <= FILL * volumeOf(box.size) + 1e-9, {
      code: 'packing-no-room',
      sentence: `Its pieces do not go into ${box.name}.`,
      expected: room.join(' × '),
      found: large.map(({ number }) => number).join(', ') || `${filled} m³`,
    }),
  ];
}

function volumeOf({ length, width, height }: CaseSize): number {
  return length * width * height;
}

function edgesOf({ length, width, height }: CaseSize): readonly number[] {
  return [length, width, height].toSorted((one, other) => other - one);
}
