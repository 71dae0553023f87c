/*
 * Help for every field of a list or site: what it is, how to measure it, what not knowing costs, what can hurt, and a drawing.
 * Invariant: label, short help and what stands in come from the columns themselves, so that template and help never differ.
 * Not here: the texts and drawings (lib/documents/guide/field-guide.ts).
 * Read next: ../../documents/guide/field-guide.ts, ../../intake/column-spec.ts.
 */
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { COLUMN_GUIDE } from '#lib/documents/guide/field-guide.ts';
import { type GuideEntry, type LabelledEntry, WIDENED } from '#lib/documents/guide/field-guide-entry.ts';
import { FOUND_GUIDE } from '#lib/documents/guide/field-guide-found.ts';
import { SITE_GUIDE } from '#lib/documents/guide/field-guide-site.ts';
import { fieldPicture } from '#lib/documents/guide/field-pictures.ts';
import type { ColumnGroup } from '#lib/intake/column-spec.ts';
import { COLUMNS } from '#lib/intake/columns.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

export interface FieldHelp {
  readonly field: string;
  readonly label: string;
  readonly what: string;
  readonly example: string;
  readonly measure: readonly string[];
  /** What stands in while it is not known. */
  readonly unknown: string;
  /** What grows wider while it is not known. */
  readonly widens: readonly string[];
  readonly caution: string | null;
  readonly picture: Drawing | null;
}

export interface GuideSection {
  readonly title: string;
  readonly fields: readonly FieldHelp[];
}

const SECTIONS: readonly { readonly group: ColumnGroup; readonly title: string }[] = [
  { group: 'identity', title: 'Which valve, where' },
  { group: 'valve', title: 'The valve' },
  { group: 'process', title: 'What is in the line' },
  { group: 'state', title: 'The state it is in' },
  { group: 'stem', title: 'Stem and thread' },
  { group: 'torque', title: 'Turns, torque and gearbox' },
  { group: 'drive', title: 'What is turned' },
  { group: 'place', title: 'Room and ground' },
  { group: 'hazard', title: 'Hazards and the rest' },
];

/** Everything, in the order in which one walks up to a valve. */
export function fieldGuide(context: Context): Result<readonly GuideSection[]> {
  const allowed = authorise(context, 'read help');
  if (!allowed.ok) return allowed;
  const ofColumns = SECTIONS.map(({ group, title }) => ({
    title,
    fields: COLUMNS.filter((column) => column.group === group).map((column) => columnHelp(column.name)),
  }));
  return ok([
    ...ofColumns,
    { title: 'The whole site', fields: SITE_GUIDE.map(labelledHelp) },
    { title: 'After the work', fields: FOUND_GUIDE.map(labelledHelp) },
  ]);
}

/** Help of one field by the name of its column, or of its key in the site file. */
export function fieldHelp(context: Context, field: string): Result<FieldHelp> {
  const allowed = authorise(context, 'read help');
  if (!allowed.ok) return allowed;
  if (COLUMNS.some(({ name }) => name === field)) return ok(columnHelp(field));
  const labelled = [...SITE_GUIDE, ...FOUND_GUIDE].find((entry) => entry.field === field);
  if (labelled) return ok(labelledHelp(labelled));
  return failed({
    code: 'no-such-field',
    sentence: `No field is called ${field}; the page “Measuring” lists them all.`,
  });
}

function columnHelp(field: string): FieldHelp {
  const column = COLUMNS.find(({ name }) => name === field);
  const entry = COLUMN_GUIDE.find((guide) => guide.field === field);
  invariant(column && entry, `The column ${field} has no help.`);
  return joined(entry, { label: column.label, what: column.help, unknown: column.unknown, example: column.example });
}

function labelledHelp(entry: LabelledEntry): FieldHelp {
  return joined(entry, { label: entry.label, what: entry.help, unknown: entry.unknown, example: '' });
}

function joined(entry: GuideEntry, words: Pick<FieldHelp, 'label' | 'what' | 'unknown' | 'example'>): FieldHelp {
  const { field, measure, widens, caution, picture } = entry;
  return {
    field,
    ...words,
    measure,
    widens: widens.map((what) => WIDENED[what]),
    caution: caution ?? null,
    picture: picture === undefined ? null : fieldPicture({ name: picture, title: words.label }),
  };
}
