/*
 * What transport law asks of one case: lithium packs by watt-hours, drained petrol machines, vented hoses, empty cans.
 * Invariant: fuel never travels in a case; every line carries its source.
 * Not here: the despatcher's own check, which a trained person makes.
 * Read next: transport-points.ts.
 */
import { type Kilograms, type WattHours, wattHours } from '#lib/units/quantity.ts';
import type { Piece } from './piece.ts';

export type Transport = 'road' | 'air' | 'sea';

export interface DangerousGoods {
  readonly id: 'lithium' | 'drained petrol machine' | 'vented air equipment' | 'empty fuel can';
  /** UN number as it stands on the paper, or null where the goods are outside the rules. */
  readonly un: string | null;
  readonly wattHours: WattHours;
  /** Proper shipping name, or null where the goods are outside the rules. */
  readonly name: string | null;
  /** What stands on the outside of the case. */
  readonly marks: readonly string[];
  /** In full, or eased by a special provision, or outside the rules. */
  readonly route: 'full' | 'eased' | 'outside';
  readonly sentence: string;
  readonly source: string;
}

/** Wh: largest lithium-ion battery under special provision 188. Source: ADR, IMDG SP 188. */
const SMALL_BATTERY = 100;
/** kg gross: a package of batteries alone under SP 188. */
const SMALL_PACKAGE = 30;

const SP188 = 'ADR and IMDG special provision 188; UN 3480 and UN 3481 as listed in ADR table A';
const AIR = `${SP188}; IATA Dangerous Goods Regulations, packing instructions 965 and 966 (from memory)`;
const SP363 = 'ADR special provision 363: a machine without fuel, tank drained, is not subject to ADR';

export interface CaseQuestion {
  readonly pieces: readonly Piece[];
  /** Gross mass of the package. */
  readonly gross: Kilograms;
  readonly transport: Transport;
}

export function dangerousGoods({ pieces, gross, transport }: CaseQuestion): readonly DangerousGoods[] {
  return [
    ...lithiumLine({ pieces, gross, transport }),
    ...noteFor({
      pieces,
      kind: 'petrol drive',
      line: { id: 'drained petrol machine', sentence: tellDrained(transport), source: SP363 },
    }),
    ...noteFor({
      pieces,
      kind: 'fuel can',
      line: {
        id: 'empty fuel can',
        sentence:
          'Can clean, dry and vented, cap off until it is. Fuel is bought near the site; it never travels with the equipment.',
        source: 'ADR 1.1.3.1 (c) does not cover supply by a hire delivery; UN 1203 otherwise',
      },
    }),
    ...noteFor({
      pieces,
      kind: 'air hose',
      line: {
        id: 'vented air equipment',
        sentence: 'Hoses travel vented, without pressure.',
        source: 'ADR 1.1.3.2 (c), from memory',
      },
    }),
  ];
}

function lithiumLine({ pieces, gross, transport }: CaseQuestion): readonly DangerousGoods[] {
  const carried = pieces.flatMap(({ lithium }) => (lithium === null ? [] : [lithium]));
  if (carried.length === 0) return [];
  const packs = carried.reduce((sum, { packs: count }) => sum + count, 0);
  const energy = carried.reduce((sum, pack) => sum + pack.energy * pack.packs, 0);
  const largest = Math.max(...carried.map((pack) => pack.energy));
  const withEquipment = pieces.some(({ kind }) => kind === 'battery drive');
  // By air packs alone travel in full whatever their energy: the easing for small ones (section II) was deleted in 2022.
  const eased = transport !== 'air' || withEquipment;
  const small = eased && largest <= SMALL_BATTERY && (withEquipment || gross <= SMALL_PACKAGE);
  const un = withEquipment ? 'UN 3481' : 'UN 3480';
  const name = withEquipment ? 'LITHIUM ION BATTERIES PACKED WITH EQUIPMENT' : 'LITHIUM ION BATTERIES';
  const head = `${un}, ${name}: ${packs} ${packs === 1 ? 'pack' : 'packs'}, the largest of ${largest} Wh, ${energy} Wh together`;
  const route = small
    ? 'Small batteries: lithium battery mark, terminals covered, no transport document'
    : `Class 9 in full: label 9A, UN packaging, ${DOCUMENT[transport]}`;
  return [
    {
      id: 'lithium',
      un,
      name,
      marks: small ? [`Lithium battery mark, 100 × 100 mm, with ${un}`] : ['Label 9A, 100 × 100 mm', un, name],
      wattHours: wattHours(energy),
      route: small ? 'eased' : 'full',
      sentence: `${head}. ${route}.${tellAir({ withEquipment, transport })}`,
      source: transport === 'air' ? AIR : SP188,
    },
  ];
}

function tellAir({
  withEquipment,
  transport,
}: {
  readonly withEquipment: boolean;
  readonly transport: Transport;
}): string {
  if (transport !== 'air') return '';
  return withEquipment
    ? ' By air: charged to 30 % or less, packing instruction 966; the carrier is asked first.'
    : ' By air: charged to 30 % or less, cargo aircraft only, packing instruction 965; the carrier is asked first.';
}

function tellDrained(transport: Transport): string {
  const base = 'Tank and carburettor drained, cap closed, dry run done; no fuel in the case.';
  return transport === 'road'
    ? base
    : `${base} By ${transport} the carrier is asked first: UN 3528 applies unless its own rule for drained machines does.`;
}

/** Order of the line in ADR 5.4.1.1: UN number, name, label, tunnel code (from memory). */
const DOCUMENT: Readonly<Record<Transport, string>> = {
  road: 'transport document with tunnel code (E)',
  sea: 'dangerous goods declaration for the vessel',
  air: 'shipper’s declaration by a trained person',
};

interface NoteQuestion {
  readonly pieces: readonly Piece[];
  readonly kind: Piece['kind'];
  readonly line: Pick<DangerousGoods, 'id' | 'sentence' | 'source'>;
}

function noteFor({ pieces, kind, line }: NoteQuestion): readonly DangerousGoods[] {
  return pieces.some((piece) => piece.kind === kind)
    ? [{ ...line, un: null, name: null, marks: [], wattHours: wattHours(0), route: 'outside' }]
    : [];
}
