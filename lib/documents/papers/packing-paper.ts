/*
 * The packing list: booking barcode, every case with contents, serial numbers, mass, lift mark, energy and dangerous goods, boxes to tick.
 * Invariant: every piece of the booking stands on a line with a box of its own.
 * Not here: packing itself (packing), loading a vehicle.
 * Read next: paper-inputs.ts.
 */

import { countText, dateText, massText } from '#lib/documents/words/print-values.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { certificatesTable } from './certificates-paper.ts';
import type { Block, Paper, TableRow } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import type { CaseInput, CertificateInput, PaperContext } from './paper-inputs.ts';

export interface PackingInput {
  readonly context: PaperContext;
  readonly bookingNumber: string;
  readonly depot: string;
  readonly transport: 'road' | 'air' | 'sea';
  readonly cases: readonly CaseInput[];
  /** Sentence about the whole load, e.g. the thousand-point sum of the road regulations. */
  readonly loadSentence?: string;
  /** What a crew should have and the load does not hold. */
  readonly lacking?: readonly string[];
  /** What travels with the units; absent before they are picked. */
  readonly certificates?: readonly CertificateInput[];
}

export function packingPaper(input: PackingInput): Paper {
  const { context, cases } = input;
  const { system } = context;
  const mass = cases.reduce((sum, one) => sum + one.mass_kg, 0);
  const energy = cases.reduce((sum, one) => sum + one.energy_wh, 0);
  const pieces = cases.reduce((sum, one) => sum + one.contents.reduce((count, piece) => count + piece.count, 0), 0);
  const facts = [
    ...(input.bookingNumber === context.number ? [] : [{ label: 'Booking', value: input.bookingNumber }]),
    ...siteFacts(context),
    { label: 'From', value: input.depot },
    { label: 'Goes by', value: input.transport },
    {
      label: 'Load',
      value: `${countText(cases.length, 'case')}, ${countText(pieces, 'piece')}, ${massText(mass, system)}`,
    },
    { label: 'Battery energy', value: energy === 0 ? 'none' : `${Math.round(energy)} Wh` },
    { label: 'Issued', value: dateText(context.issuedOn) },
  ];
  return {
    ...paperHead(context, {
      kind: 'packing list',
      title: 'Packing list',
      facts,
      foot: 'Lift as marked. Petrol machines travel drained; fuel never travels in the case.',
    }),
    blocks: [
      { kind: 'barcode', text: input.bookingNumber },
      ...notInTheLoad(input.lacking ?? []),
      ...overview(cases, system),
      ...dangerousGoods(input),
      ...cases.flatMap((one) => caseBlocks(one, system)),
      ...certificatesTable(input.certificates ?? []),
      ...loadCheck(),
    ],
  };
}

function notInTheLoad(lacking: readonly string[]): readonly Block[] {
  return lacking.length === 0 ? [] : [{ kind: 'callout', tone: 'caution', title: 'Not in the load', items: lacking }];
}

function overview(cases: readonly CaseInput[], system: UnitSystem): readonly Block[] {
  const rows = cases.map(
    (one): TableRow => ({
      cells: [
        '☐',
        one.number,
        `Crew ${one.crew}`,
        massText(one.mass_kg, system),
        one.lift,
        one.energy_wh === 0 ? '—' : `${Math.round(one.energy_wh)} Wh`,
        one.dangerousGoods.length === 0 ? 'none' : 'yes, see below',
      ],
    }),
  );
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Cases' },
      columns: [
        { label: 'Loaded', share: 10, align: 'centre' },
        { label: 'Case', share: 20 },
        { label: 'For', share: 12 },
        { label: 'Mass', share: 13, align: 'right' },
        { label: 'Lift mark', share: 20 },
        { label: 'Energy', share: 12, align: 'right' },
        { label: 'Dangerous goods', share: 20 },
      ],
      rows,
    },
  ];
}

function dangerousGoods(input: PackingInput): readonly Block[] {
  const { system } = input.context;
  const lines = input.cases.flatMap((one) =>
    one.dangerousGoods.map((sentence) => `${one.number}: ${sourceIn(sentence, system)}`),
  );
  const all = [...lines, ...(input.loadSentence === undefined ? [] : [sourceIn(input.loadSentence, system)])];
  if (all.length === 0) return [];
  return [
    {
      kind: 'callout',
      tone: lines.length > 0 ? 'caution' : 'note',
      title: `Dangerous goods, by ${input.transport}`,
      items: [
        ...all,
        'Whoever hands over and carries the load checks these lines against the rules in force on the day.',
      ],
    },
  ];
}

/** A case of so few rows is kept on one page. */
const WHOLE_CASE = 20;

function caseBlocks(one: CaseInput, system: UnitSystem): readonly Block[] {
  const rows = one.contents.map(
    (piece): TableRow => ({
      cells: [
        '☐',
        '☐',
        String(piece.count),
        piece.number,
        piece.name,
        piece.serials.length === 0 ? '________' : piece.serials.join(', '),
        massText(piece.mass_kg, system),
      ],
    }),
  );
  rows.push({ cells: ['', '', '', '', 'Case with contents', '', massText(one.mass_kg, system)], tone: 'total' });
  const table: Block = {
    kind: 'table',
    caption: {
      level: 2,
      text: `Case ${one.number} · crew ${one.crew} · ${massText(one.mass_kg, system)} · lift: ${one.lift}${one.energy_wh === 0 ? '' : ` · ${Math.round(one.energy_wh)} Wh`}`,
    },
    columns: [
      { label: 'Out', share: 6, align: 'centre' },
      { label: 'Back', share: 6, align: 'centre' },
      { label: 'Count', share: 8, align: 'right' },
      { label: 'Number', share: 12 },
      { label: 'Piece', share: 38 },
      { label: 'Serial numbers', share: 22 },
      { label: 'Mass', share: 11, align: 'right' },
    ],
    rows,
    dense: true,
  };
  return [rows.length <= WHOLE_CASE ? { kind: 'together', blocks: [table] } : table];
}

function loadCheck(): readonly Block[] {
  return [
    {
      kind: 'together',
      blocks: [
        { kind: 'heading', level: 1, text: 'Before it leaves' },
        {
          kind: 'list',
          marker: 'box',
          items: [
            'The chain of every assembly of this job was tried together.',
            'Function test at torque done and recorded.',
            'Certificates and instructions are in the kit.',
            'Packs at the state of charge that the way of transport allows; terminals covered.',
            'Cases closed, marked and secured; heaviest lowest.',
            'Instruction given to those who will use it.',
          ],
        },
        {
          kind: 'signatures',
          parties: [
            { title: 'Packed by', lines: ['Name', 'Signature and date'] },
            { title: 'Loaded by', lines: ['Name, vehicle', 'Signature and date'] },
            { title: 'Received by', lines: ['Name', 'Signature and date'] },
          ],
        },
      ],
    },
  ];
}
