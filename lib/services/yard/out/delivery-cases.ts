/*
 * The cases of one delivery as papers and messages tell them: contents, mass with the case itself, lift mark, energy, dangerous goods.
 * Invariant: what was loaded and nothing else; what lies in no case goes loose, told as a unit of its own.
 * Not here: packing (lib/packing), which case a piece was put in (db/queries/picking.ts).
 * Read next: delivery-despatch.ts.
 */
import type { LoadedItem, LoadedUnit } from '#db/queries/deliveries.ts';
import type { LoadCaseRow, LoadPieceRow } from '#db/queries/picking.ts';
import type { CaseInput } from '#lib/documents/papers/paper-inputs.ts';
import type { Model } from '#lib/equipment/model.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import { dangerousGoods } from '#lib/packing/dangerous-goods.ts';
import { liftMark } from '#lib/packing/lift-mark.ts';
import { pieceOf } from '#lib/packing/piece.ts';
import type { LoadTransport } from '#lib/stock/load-check.ts';
import { caseCode } from '#lib/stock/scan-code.ts';
import { kilograms } from '#lib/units/quantity.ts';

export interface DeliveredLoad {
  readonly booking: string;
  readonly models: readonly Model[];
  readonly units: readonly LoadedUnit[];
  readonly items: readonly LoadedItem[];
  readonly cases: readonly LoadCaseRow[];
  readonly pieces: readonly LoadPieceRow[];
  readonly transport: LoadTransport;
}

interface Inside {
  readonly model: Model;
  readonly serial: string | null;
  readonly count: number;
}

export function deliveryCases(load: DeliveredLoad): readonly CaseInput[] {
  const models = new Map(load.models.map((model) => [model.number, model]));
  const inside = new Map<string, readonly Inside[]>();
  const put = (label: string, one: Inside) => inside.set(label, [...(inside.get(label) ?? []), one]);
  for (const { model, serial, caseLabel } of load.units) {
    const known = models.get(model);
    if (known) put(caseLabel, { model: known, serial, count: 1 });
  }
  for (const { model, count } of load.items) {
    const known = models.get(model);
    const packed = load.pieces.find((piece) => piece.unit_serial === null && piece.model_number === model);
    const label = packed === undefined ? '' : caseCode({ booking: load.booking, number: packed.case_number });
    if (known) put(inside.has(label) ? label : '', { model: known, serial: null, count });
  }
  return [...inside]
    .toSorted(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b, 'en', { numeric: true })))
    .map(([label, contents]) => caseInput({ load, label, contents }));
}

interface CaseAsked {
  readonly load: DeliveredLoad;
  readonly label: string;
  readonly contents: readonly Inside[];
}

function caseInput({ load, label, contents }: CaseAsked): CaseInput {
  const row = load.cases.find(({ number }) => caseCode({ booking: load.booking, number }) === label);
  const tare = caseKinds(load.models).find(({ name }) => name === row?.name)?.mass ?? 0;
  const pieces = contents.flatMap(({ model, serial, count }) =>
    Array.from({ length: count }, () => pieceOf({ model, serial })),
  );
  const mass = kilograms(pieces.reduce((sum, piece) => sum + piece.mass, tare));
  return {
    number: row === undefined ? 'loose' : String(row.number),
    crew: row?.crew ?? 1,
    contents: contentsOf(contents),
    mass_kg: mass,
    lift: row === undefined ? 'each piece by itself' : liftMark(mass).mark,
    energy_wh: pieces.reduce((sum, { lithium }) => sum + (lithium === null ? 0 : lithium.energy * lithium.packs), 0),
    dangerousGoods: dangerousGoods({ pieces, gross: mass, transport: load.transport }).map(({ sentence }) => sentence),
  };
}

function contentsOf(contents: readonly Inside[]): CaseInput['contents'] {
  const numbers = [...new Set(contents.map(({ model }) => model.number))];
  return numbers.flatMap((number) => {
    const same = contents.filter(({ model }) => model.number === number);
    const [first] = same;
    if (first === undefined) return [];
    const count = same.reduce((sum, one) => sum + one.count, 0);
    return [
      {
        number,
        name: first.model.name,
        count,
        serials: same.flatMap(({ serial }) => (serial === null ? [] : [serial])),
        mass_kg: first.model.mass * count,
      },
    ];
  });
}
