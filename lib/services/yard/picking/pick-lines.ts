/*
 * What is picked for a booking, piece by piece with the bay it lies in, in the order of the walk.
 * Invariant: reads only; what lies in the despatching depot comes first.
 * Not here: what was planned and is held (pick-facts.ts), a walk over several bookings (open-walk.ts).
 * Read next: open-picking.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { listBays, listShelves } from '#db/queries/stock.ts';
import { isPicked, obligatoryNeeds, type PickFacts } from './pick-facts.ts';

export interface PickLine {
  readonly kind: 'unit' | 'counted';
  /** Serial number, or the model's number where pieces are counted. */
  readonly code: string;
  readonly model: string;
  readonly name: string;
  readonly count: number;
  readonly depot: string;
  readonly bay: string;
  readonly picked: boolean;
  /** Why it cannot be left behind. */
  readonly why: string | null;
}

export function pickLines(db: DbOrTx, facts: PickFacts): readonly PickLine[] {
  const shelves = listShelves(db);
  const why = new Map(obligatoryNeeds(facts).map((need) => [need.number, need.why]));
  const units = facts.pieces.map(
    ({ row, unit, model, planned }): PickLine => ({
      kind: 'unit',
      code: row.unit_serial,
      model: model.number,
      name: model.name,
      count: 1,
      depot: unit.depot,
      bay: unit.bay,
      picked: isPicked(row),
      why: why.get(planned) ?? null,
    }),
  );
  const counted = facts.items.map((item): PickLine => {
    const shelf =
      shelves.find(({ model_number, depot }) => model_number === item.model_number && depot === facts.booking.depot) ??
      shelves.find(({ model_number }) => model_number === item.model_number);
    return {
      kind: 'counted',
      code: item.model_number,
      model: item.model_number,
      name: item.model.name,
      count: item.count,
      depot: shelf?.depot ?? facts.booking.depot,
      bay: shelf?.bay ?? '',
      picked: isPicked(item),
      why: why.get(item.model_number) ?? null,
    };
  });
  const walk = walkPlaces(db);
  const away = ({ depot }: PickLine): number => (depot === facts.booking.depot ? 0 : 1);
  return [...units, ...counted].sort((a, b) => away(a) - away(b) || walk(a, b));
}

/** Orders by depot, by the place of the bay in the walk, and by code within a bay. */
export function walkPlaces(db: DbOrTx): (a: PickLine, b: PickLine) => number {
  const places = new Map(listBays(db).map(({ depot, code, walk_order }) => [`${depot} ${code}`, walk_order]));
  const place = ({ depot, bay }: PickLine): number => places.get(`${depot} ${bay}`) ?? Number.POSITIVE_INFINITY;
  return (a, b) =>
    compareText(a.depot, b.depot) ||
    compareNumber(place(a), place(b)) ||
    compareText(a.bay, b.bay) ||
    compareText(a.code, b.code);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function compareNumber(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
