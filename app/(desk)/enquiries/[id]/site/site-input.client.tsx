'use client';

import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import type { SiteField, SiteGroup } from './site-fields.ts';

/** One fact of a site; what is left empty is not known. */
export function SiteInput({ field, value }: { readonly field: SiteField; readonly value: unknown }) {
  const id = `site-${field.key}`;
  const text = Array.isArray(value) ? value.join(', ') : value === undefined ? '' : String(value);
  const choices = field.kind === 'yes or no' ? ['true', 'false'] : field.choices;
  const isOther = choices !== undefined && text !== '' && !choices.includes(text);
  return (
    <div>
      <div className="labelled">
        <label htmlFor={id}>{field.label}</label>
        <FieldHelp column={field.key === 'temperature' ? 'site_temperature' : field.key} label={field.label} />
      </div>
      {choices ? (
        <select id={id} name={field.key} defaultValue={text} aria-describedby={`${id}-help`}>
          <option value="">not known</option>
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice === 'true' ? 'yes' : choice === 'false' ? 'no' : (field.words?.[choice] ?? choice)}
            </option>
          ))}
          {isOther && <option value={text}>as given: {text}</option>}
        </select>
      ) : (
        <input
          id={id}
          name={field.key}
          type={field.kind === 'date' || field.kind === 'number' ? field.kind : 'text'}
          step="any"
          defaultValue={text}
          aria-describedby={`${id}-help`}
        />
      )}
      <small id={`${id}-help`}>{field.help}</small>
    </div>
  );
}

/** Undefined takes a fact away: JSON leaves it out. */
export function siteValuesOf(
  ...[form, groups]: readonly [FormData, readonly SiteGroup[]]
): Readonly<Record<string, unknown>> {
  const fields = groups.flatMap((group) => group.fields);
  return Object.fromEntries(
    fields.map((field) => [field.key, readField(field, String(form.get(field.key) ?? '').trim())]),
  );
}

function readField(field: SiteField, text: string): unknown {
  if (text === '') return undefined;
  if (field.kind === 'number') return Number(text);
  if (field.kind === 'yes or no') return text === 'true';
  if (field.kind === 'list') {
    return text
      .split(',')
      .map((part) => part.trim())
      .filter((part) => part !== '');
  }
  return text;
}
