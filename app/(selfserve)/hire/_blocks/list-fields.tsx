import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import { Field } from './frame-blocks.tsx';

interface ListFieldsProps {
  readonly language: Language;
  /** What was pasted before. */
  readonly rows?: string | undefined;
}

export function ListFields({ language, rows }: ListFieldsProps) {
  return (
    <>
      <p>{say(language, 'start.list-lead')}</p>
      <Field name="list" label={say(language, 'start.list-file')}>
        <input id="list" name="list" type="file" accept=".csv,.tsv,.txt,.xlsx" />
      </Field>
      <Field name="rows" label={say(language, 'start.list-paste')}>
        <textarea id="rows" name="rows" rows={4} placeholder={'tag\tsize\ttype\tdriven by'} defaultValue={rows} />
      </Field>
    </>
  );
}
