/*
 * All drawings of the field guide by name, each with the sentence that tells it.
 * Invariant: every drawing is used by some field, and every picture a field names is here; a test holds both.
 * Not here: which field shows which (field-guide-*.ts).
 * Read next: field-picture-parts.ts.
 */
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { FIELD_BOX } from './field-picture-parts.ts';
import { DRIVE_PICTURES } from './field-pictures-drive.ts';
import { PLACE_PICTURES } from './field-pictures-place.ts';
import { STEM_PICTURES } from './field-pictures-stem.ts';
import { VALVE_PICTURES } from './field-pictures-valve.ts';

const PICTURES = { ...VALVE_PICTURES, ...STEM_PICTURES, ...DRIVE_PICTURES, ...PLACE_PICTURES };

export type FieldPictureName = keyof typeof PICTURES;

export const FIELD_PICTURE_NAMES: readonly string[] = Object.keys(PICTURES);

export function fieldPicture({ name, title }: { readonly name: FieldPictureName; readonly title: string }): Drawing {
  const { told, shapes } = PICTURES[name];
  return { ...FIELD_BOX, title, description: told, shapes };
}
