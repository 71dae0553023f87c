/*
 * The load of a booking: its pieces crew by crew, the cases they lie in, and the cases that are proposed where nobody has packed yet.
 * Invariant: every piece of the booking is in one case or told as not assigned; a proposal was checked independently.
 * Not here: putting a piece in (pack-piece.ts), papers (load-papers.ts).
 * Read next: open-packing.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { casesOfBooking, insertCase, insertLoadPiece, piecesOfLoad } from '#db/queries/picking.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Transport } from '#lib/packing/dangerous-goods.ts';
import { type Piece, pieceOf } from '#lib/packing/piece.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { crewOffset } from '#lib/services/plans/crew-numbers.ts';
import { packKit } from '#lib/services/plans/pack-kit.ts';
import { isPicked, type PickFacts } from '../picking/pick-facts.ts';

/** A unit, or counted pieces of one model that one crew gets. */
export interface LoadItem {
  readonly serial: string | null;
  readonly model: Model;
  readonly count: number;
  readonly crew: number;
  readonly picked: boolean;
}

export interface CaseContent extends Omit<LoadItem, 'crew'> {
  /** Row it is stored in; null in a proposal. */
  readonly id: number | null;
  readonly packed: boolean;
}

export interface LoadCase {
  readonly number: number;
  /** Name of the case, or `loose`. */
  readonly name: string;
  readonly crew: number;
  readonly contents: readonly CaseContent[];
}

export interface Load {
  readonly cases: readonly LoadCase[];
  readonly unassigned: readonly LoadItem[];
  readonly transport: Transport;
  readonly isStored: boolean;
  /** How far the number of cases of a proposal is proven, crew by crew. */
  readonly proofs: readonly string[];
}

interface Asked {
  readonly context: Context;
  readonly facts: PickFacts;
}

export function loadOfBooking(db: DbOrTx, asked: Asked): Load {
  const { facts } = asked;
  const items = itemsByCrew(facts);
  const transport = facts.papers?.site.transport ?? 'road';
  const stored = casesOfBooking(db, facts.booking.id);
  if (stored.length === 0) return { ...propose(asked, { items, transport }), transport, isStored: false };
  const rows = piecesOfLoad(db, facts.booking.id);
  const taken = rows.map((row) => ({ row, item: itemOf(items, row) }));
  const cases = stored.map(
    ({ number, name, crew }): LoadCase => ({
      number,
      name,
      crew,
      contents: taken.flatMap(({ row, item }) =>
        row.case_number === number && item !== undefined
          ? [
              {
                id: row.id,
                serial: row.unit_serial,
                model: item.model,
                count: row.count,
                picked: item.picked,
                packed: row.packed_at !== null,
              },
            ]
          : [],
      ),
    }),
  );
  return { cases, unassigned: unassignedOf(items, rows), transport, isStored: true, proofs: [] };
}

interface StoredPiece {
  readonly unit_serial: string | null;
  readonly model_number: string;
  readonly count: number;
}

function itemOf(items: readonly LoadItem[], row: StoredPiece): LoadItem | undefined {
  return items.find(({ serial, model }) =>
    row.unit_serial === null ? serial === null && model.number === row.model_number : serial === row.unit_serial,
  );
}

/** Units that came in by a swap, and counted pieces that no case holds. */
function unassignedOf(items: readonly LoadItem[], rows: readonly StoredPiece[]): readonly LoadItem[] {
  const left = new Map<string, number>();
  for (const row of rows)
    if (row.unit_serial === null) left.set(row.model_number, (left.get(row.model_number) ?? 0) + row.count);
  return items.flatMap((item) => {
    if (item.serial !== null) return rows.some(({ unit_serial }) => unit_serial === item.serial) ? [] : [item];
    const held = Math.min(item.count, left.get(item.model.number) ?? 0);
    left.set(item.model.number, (left.get(item.model.number) ?? 0) - held);
    return held === item.count ? [] : [{ ...item, count: item.count - held }];
  });
}

/** Hands units and counted pieces to the crews of the plan; all to the first where there is no plan. */
function itemsByCrew({ papers, pieces, items }: PickFacts): readonly LoadItem[] {
  const kits = papers?.outcome.kits ?? [];
  const offset = papers === null ? 1 : crewOffset(papers.outcome);
  const wants = kits.flatMap((kit) =>
    kit.items.map(({ item, count }) => ({ crew: kit.crew + offset, item, left: count })),
  );
  const first = (kits[0]?.crew ?? 0) + offset;
  const take = (number: string, upTo: number): readonly { readonly crew: number; readonly count: number }[] => {
    const shares: { crew: number; count: number }[] = [];
    let rest = upTo;
    for (const want of wants) {
      const count = want.item === number ? Math.min(want.left, rest) : 0;
      if (count === 0) continue;
      want.left -= count;
      rest -= count;
      shares.push({ crew: want.crew, count });
    }
    return rest === 0 ? shares : [...shares, { crew: first, count: rest }];
  };
  return [
    ...pieces.flatMap(({ row, model, planned }) =>
      take(planned, 1).map(({ crew }) => ({ serial: row.unit_serial, model, count: 1, crew, picked: isPicked(row) })),
    ),
    ...items.flatMap((item) =>
      take(item.model_number, item.count).map(({ crew, count }) => ({
        serial: null,
        model: item.model,
        count,
        crew,
        picked: isPicked(item),
      })),
    ),
  ];
}

function propose(
  { context, facts }: Asked,
  { items, transport }: { readonly items: readonly LoadItem[]; readonly transport: Transport },
): Pick<Load, 'cases' | 'unassigned' | 'proofs'> {
  const cases: LoadCase[] = [];
  const proofs: string[] = [];
  const crews = [...new Set(items.map(({ crew }) => crew))].sort((a, b) => a - b);
  for (const crew of crews) {
    const mine = items.filter((item) => item.crew === crew);
    const serials = new Map<string, string[]>();
    for (const { serial, model } of mine)
      if (serial !== null) serials.set(model.number, [...(serials.get(model.number) ?? []), serial]);
    const packed = packKit({
      items: mine.map(({ model, count }) => ({ item: model.number, count })),
      models: facts.models,
      liftLimit: houseFacts(context).liftLimit,
      transport,
      nextSerial: (number) => serials.get(number)?.shift() ?? null,
    });
    proofs.push(crews.length === 1 ? packed.proof.sentence : `Crew ${crew}: ${packed.proof.sentence}`);
    for (const one of packed.cases)
      cases.push({ number: cases.length + 1, name: one.name, crew, contents: contentsOf(one.pieces, mine) });
  }
  return { cases, unassigned: [], proofs };
}

function contentsOf(pieces: readonly Piece[], items: readonly LoadItem[]): readonly CaseContent[] {
  const contents: CaseContent[] = [];
  for (const piece of pieces) {
    const item = items.find(({ serial, model }) => serial === piece.serial && model.number === piece.number);
    if (item === undefined) continue;
    const same = contents.findIndex(
      ({ serial, model }) => serial === null && piece.serial === null && model.number === piece.number,
    );
    const before = contents[same];
    if (before !== undefined) contents[same] = { ...before, count: before.count + 1 };
    else
      contents.push({
        id: null,
        serial: piece.serial,
        model: item.model,
        count: 1,
        picked: item.picked,
        packed: false,
      });
  }
  return contents;
}

/** Keeps the proposal as what is to be packed. */
export function storeLoad(tx: DbOrTx, { bookingId, load }: { readonly bookingId: number; readonly load: Load }): void {
  for (const { number, name, crew, contents } of load.cases) {
    insertCase(tx, { booking_id: bookingId, number, name, crew });
    for (const { serial, model, count } of contents)
      insertLoadPiece(tx, {
        booking_id: bookingId,
        case_number: number,
        unit_serial: serial,
        model_number: model.number,
        count,
      });
  }
}

/** As packing sees them, one by one. */
export function piecesOf(contents: readonly Pick<CaseContent, 'serial' | 'model' | 'count'>[]): readonly Piece[] {
  return contents.flatMap(({ serial, model, count }) =>
    Array.from({ length: count }, () => pieceOf({ model, serial })),
  );
}
