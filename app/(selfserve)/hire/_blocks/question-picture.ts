import type { Drawing, Shape } from '#lib/documents/drawings/drawing.ts';
import { COLUMN_GUIDE } from '#lib/documents/guide/field-guide.ts';
import { fieldPicture } from '#lib/documents/guide/field-pictures.ts';
import { numbersWith, writer } from '#lib/documents/words/written-forms.ts';
import { SHORT_IN_PICTURES } from '#lib/wording/german/picture-words.ts';
import type { Language } from '#lib/wording/language.ts';
import { tellerFor } from '#lib/wording/told-in.ts';

/** The field guide's drawing of a question, lettered in the language; a word that has none there stays away, and the text beside it says how. */
export function questionPicture(column: string, language: Language): Drawing | null {
  const name = COLUMN_GUIDE.find(({ field }) => field === column)?.picture;
  if (name === undefined) return null;
  const picture = fieldPicture({ name, title: '' });
  if (language === 'en') return picture;
  const { told } = tellerFor({ language, own: SHORT_IN_PICTURES });
  const write = writer({ forms: { dates: 'day-month-year', numbers: numbersWith('comma') } });
  const shapes = picture.shapes
    .filter((shape) => shape.kind !== 'text' || told(shape.text).language === language)
    .map((shape): Shape => (shape.kind === 'text' ? { ...shape, text: write(told(shape.text).text) } : shape));
  return { ...picture, shapes };
}
