/*
 * What a person sees who packs a booking: each case with what goes in, its mass and lift mark as it stands, and what transport asks.
 * Invariant: reads only; masses are those of the models, whether a piece is in its case yet or not.
 * Not here: scans (pack-piece.ts), papers (load-papers.ts).
 * Read next: load-facts.ts.
 */
import { ok, type Result } from '#lib/kernel/result.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import { layIn } from '#lib/packing/centre-of-mass.ts';
import { type ConsignedCase, consignmentOf } from '#lib/packing/consignment.ts';
import { type DangerousGoods, dangerousGoods, type Transport } from '#lib/packing/dangerous-goods.ts';
import { liftMark } from '#lib/packing/lift-mark.ts';
import { type RouteCheck, routeChecks } from '#lib/packing/route-check.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { type Kilograms, kilograms } from '#lib/units/quantity.ts';
import { bookingNumbered } from '../booking-record.ts';
import { type PickFacts, pickFacts } from '../picking/pick-facts.ts';
import { type CaseContent, type Load, type LoadCase, loadOfBooking, piecesOf } from './load-facts.ts';

export interface PackedContent {
  /** Serial number, or the model's number where pieces are counted. */
  readonly code: string;
  readonly serial: string | null;
  readonly model: string;
  readonly name: string;
  readonly count: number;
  readonly mass_kg: number;
  readonly picked: boolean;
  readonly packed: boolean;
}

export interface CaseView {
  readonly number: number;
  readonly name: string;
  readonly crew: number;
  /** With everything that belongs in it. */
  readonly mass_kg: number;
  /** With what is in it by now. */
  readonly now_kg: number;
  readonly lift: string;
  readonly liftSentence: string;
  /** Height of the centre of mass above the floor of the inside; null for a loose piece. */
  readonly centre_m: number | null;
  readonly energy_wh: number;
  readonly goods: readonly DangerousGoods[];
  /** From the bottom up. */
  readonly contents: readonly PackedContent[];
}

export interface PackingView {
  readonly number: string;
  readonly state: string;
  readonly customer: string;
  readonly title: string;
  readonly transport: Transport;
  readonly cases: readonly CaseView[];
  readonly unassigned: readonly PackedContent[];
  readonly kinds: readonly string[];
  readonly proofs: readonly string[];
  readonly loadSentence: string;
  /** What each way of transport asks of the load. */
  readonly routes: readonly RouteCheck[];
  readonly mass_kg: number;
  readonly pieces: number;
  readonly packed: number;
  readonly isStored: boolean;
  readonly hasQuote: boolean;
}

export function openPacking(context: Context, number: string): Result<PackingView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const found = bookingNumbered(db, number);
  if (!found.ok) return found;
  const facts = pickFacts(db, { context, booking: found.value });
  return ok(packingView({ facts, load: loadOfBooking(db, { context, facts }) }));
}

export function packingView({ facts, load }: { readonly facts: PickFacts; readonly load: Load }): PackingView {
  const { booking, papers, models } = facts;
  const views = load.cases.map((box) => caseView(box, { facts, load }));
  const contents = views.flatMap((view) => view.contents);
  const count = (of: (content: PackedContent) => boolean): number =>
    contents.filter(of).reduce((sum, one) => sum + one.count, 0);
  const weighed = load.cases.map((box) => ({
    number: box.number,
    pieces: piecesOf(box.contents),
    gross: kilograms(massOf(box, { facts, contents: box.contents })),
  }));
  const unassigned = load.unassigned.map((item) => contentView({ ...item, packed: false }));
  return {
    number: booking.number,
    state: booking.state,
    customer: papers?.customer.name ?? '',
    title: papers?.title ?? booking.note,
    transport: load.transport,
    cases: views,
    unassigned,
    kinds: caseKinds(models).map(({ name }) => name),
    proofs: load.proofs,
    loadSentence: consignmentOf(weighed.map((one) => consigned(one, load.transport))).sentence,
    routes: routeChecks(weighed),
    mass_kg: views.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
    pieces: count(() => true) + unassigned.reduce((sum, one) => sum + one.count, 0),
    packed: count(({ packed }) => packed),
    isStored: load.isStored,
    hasQuote: papers !== null,
  };
}

interface Around {
  readonly facts: PickFacts;
  readonly load: Load;
}

function caseView(box: LoadCase, { facts, load }: Around): CaseView {
  const mass = massOf(box, { facts, contents: box.contents });
  const pieces = piecesOf(box.contents);
  const kind = caseKinds(facts.models).find(({ name }) => name === box.name);
  const laid = kind === undefined ? null : layIn({ pieces, inside: kind.size });
  const place = new Map((laid?.order ?? []).map((piece, index) => [piece.serial ?? piece.number, index]));
  const lift = liftMark(kilograms(mass));
  return {
    number: box.number,
    name: box.name,
    crew: box.crew,
    mass_kg: mass,
    now_kg: massOf(box, { facts, contents: box.contents.filter(({ packed }) => packed) }),
    lift: lift.mark,
    liftSentence: lift.sentence,
    centre_m: laid?.centre ?? null,
    energy_wh: pieces.reduce((sum, { lithium }) => sum + (lithium === null ? 0 : lithium.energy * lithium.packs), 0),
    goods: dangerousGoods({ pieces, gross: kilograms(mass), transport: load.transport }),
    contents: box.contents.map(contentView).sort((a, b) => (place.get(a.code) ?? 0) - (place.get(b.code) ?? 0)),
  };
}

function contentView({ serial, model, count, picked, packed }: Omit<CaseContent, 'id'>): PackedContent {
  return {
    code: serial ?? model.number,
    serial,
    model: model.number,
    name: model.name,
    count,
    mass_kg: model.mass * count,
    picked,
    packed,
  };
}

function massOf(
  box: LoadCase,
  { facts, contents }: { readonly facts: PickFacts; readonly contents: readonly CaseContent[] },
): number {
  const empty = caseKinds(facts.models).find(({ name }) => name === box.name)?.mass ?? 0;
  return contents.reduce((sum, { model, count }) => sum + model.mass * count, Number(empty));
}

interface Weighed {
  readonly pieces: ReturnType<typeof piecesOf>;
  readonly gross: Kilograms;
}

function consigned({ pieces, gross }: Weighed, transport: Transport): ConsignedCase {
  return { pieces, dangerousGoods: dangerousGoods({ pieces, gross, transport }) };
}
