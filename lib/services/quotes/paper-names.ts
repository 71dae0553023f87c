/*
 * What stands in the papers of an enquiry as somebody wrote it: tags, places, numbers of equipment, people, addresses.
 * Invariant: none of it is ever rewritten with dates and figures in the customer's form.
 * Not here: how words are rewritten (../../documents/words/written-forms.ts).
 * Read next: papers-of.ts.
 */
import { writer } from '#lib/documents/words/written-forms.ts';
import type { PapersInput } from './papers-of.ts';

/** Words in the customer's form of dates and figures; as they are where none is agreed. */
export function writerFor(input: PapersInput): (words: string) => string {
  const { forms } = input;
  return forms === undefined ? (words) => words : writer({ forms, names: paperNames(input) });
}

export function paperNames(input: PapersInput): readonly string[] {
  const { house, customer, models, lines, serials, others = [] } = input;
  return [
    input.number,
    input.title,
    input.bookingNumber ?? '',
    ...[house.name, house.telephone, house.email, house.registration, ...house.address],
    ...house.depots.flatMap(({ name, address }) => [name, ...address]),
    ...[customer.name, customer.contact ?? '', customer.reference ?? '', ...customer.address],
    ...[input, ...others].flatMap(({ site, option, choices }) => [
      site.name ?? '',
      option?.name ?? '',
      ...(choices?.lines ?? []).map(({ text }) => text),
    ]),
    ...models.flatMap(({ number, name, marking }) => [number, name, marking ?? '']),
    ...lines.flatMap(({ tag, place }) => [tag, place.location ?? '']),
    ...Object.values(serials).flat(),
  ].filter((name) => name !== '');
}
