import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import { COLUMN_GUIDE } from '#lib/documents/guide/field-guide.ts';
import { fieldPicture } from '#lib/documents/guide/field-pictures.ts';
import type { Language } from '#lib/wording/language.ts';

/** The field guide's drawing of a question. Its words are English: elsewhere it stands without them, and the text beside it says how. */
export function questionPicture(column: string, language: Language): Drawing | null {
  const name = COLUMN_GUIDE.find(({ field }) => field === column)?.picture;
  if (name === undefined) return null;
  const picture = fieldPicture({ name, title: '' });
  return language === 'en' ? picture : { ...picture, shapes: picture.shapes.filter(({ kind }) => kind !== 'text') };
}
