/*
 * The certificates that travel with a load: what is kept of each unit that goes, for the crew to have beside the equipment.
 * Invariant: every inspection and calibration that is kept of a unit stands on a line of its own, with the day until which it is good.
 * Not here: whether a unit may go without one (lib/stock/pick-scan.ts).
 * Read next: packing-paper.ts.
 */
import { countText, dateText } from '#lib/documents/words/print-values.ts';
import type { Block, Paper } from './paper.ts';
import { paperHead, siteFacts } from './paper-head.ts';
import type { CertificateInput, PaperContext } from './paper-inputs.ts';

export interface CertificatesInput {
  readonly context: PaperContext;
  readonly bookingNumber: string;
  readonly certificates: readonly CertificateInput[];
}

export function certificatesPaper({ context, bookingNumber, certificates }: CertificatesInput): Paper {
  const units = new Set(certificates.map(({ serial }) => serial)).size;
  return {
    ...paperHead(context, {
      kind: 'certificates',
      title: 'Certificates',
      facts: [
        { label: 'Booking', value: bookingNumber },
        ...siteFacts(context),
        {
          label: 'Holds',
          value: `${countText(certificates.length, 'certificate')} of ${countText(units, 'unit')}`,
        },
        { label: 'As of', value: dateText(context.issuedOn) },
      ],
      foot: 'Days as the house keeps them. What a place or a local rule asks for besides is asked of the house before work begins.',
    }),
    blocks: [
      { kind: 'barcode', text: bookingNumber },
      ...(certificates.length === 0
        ? [{ kind: 'text', tone: 'plain', text: 'No unit of this load has a certificate.' } as const]
        : certificatesTable(certificates)),
    ],
  };
}

/** Also part of the packing list. */
export function certificatesTable(all: readonly CertificateInput[]): readonly Block[] {
  if (all.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: { level: 1, text: 'Certificates that travel with it' },
      columns: [
        { label: 'With', share: 8, align: 'centre' },
        { label: 'Serial number', share: 18 },
        { label: 'Piece', share: 40 },
        { label: 'Of', share: 16 },
        { label: 'Made out', share: 18 },
        { label: 'Good until', share: 18 },
      ],
      rows: all.map(({ serial, name, kind, doneOn, dueOn }) => ({
        cells: ['☐', serial, name, kind, dateText(doneOn), dateText(dueOn)],
      })),
      dense: true,
    },
  ];
}
