/*
 * The head that all papers share, made from the context: house, customer, number, foot line.
 * Invariant: the number names the revision whenever there is one.
 * Not here: the blocks below.
 * Read next: paper.ts.
 */

import { windowText } from '#lib/documents/words/print-values.ts';
import type { LabelledText, Paper } from './paper.ts';
import type { PaperContext } from './paper-inputs.ts';

export function paperHead(
  context: PaperContext,
  own: {
    readonly kind: Paper['kind'];
    readonly title: string;
    readonly facts: readonly LabelledText[];
    readonly foot?: string;
  },
): Omit<Paper, 'blocks'> {
  const { house, customer } = context;
  return {
    kind: own.kind,
    title: own.title,
    number: context.revision === undefined ? context.number : `${context.number} · revision ${context.revision}`,
    fixedAt: context.issuedOn,
    house: {
      name: house.name,
      lines: [
        ...house.address,
        ...[house.phone, house.email, house.taxNumber].filter((line): line is string => line !== undefined),
      ],
    },
    to: [customer.name, ...(customer.contact === undefined ? [] : [customer.contact]), ...customer.address],
    facts: own.facts,
    foot: own.foot ?? 'Estimates until measured. Local codes, the valve maker’s data and competent persons decide.',
  };
}

export function siteFacts(context: PaperContext): readonly LabelledText[] {
  const { site } = context;
  return [
    { label: 'Site', value: [site.name, ...(site.address ?? [])].join(', ') },
    { label: 'Hire window', value: windowText(site.window) },
    {
      label: 'Crews',
      value: `${site.crews} of ${site.personsPerCrew}, ${site.shiftHours} h a shift, ${site.operated ? 'with our operators' : 'dry hire'}`,
    },
    ...(context.customer.reference === undefined
      ? []
      : [{ label: 'Your reference', value: context.customer.reference }]),
  ];
}
