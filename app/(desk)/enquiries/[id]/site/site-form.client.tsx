'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import { SITE_GROUPS, type SiteField } from './site-fields.ts';

interface SiteFormProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly site: Readonly<Record<string, unknown>>;
}

/** The facts of the site; what is left empty is not known and is never filled in silently. */
export function SiteForm({ enquiryId, version, site }: SiteFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [state, setState] = useState('');

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    setState('Saving…');
    const body = { version, site: { ...site, ...valuesOf(new FormData(event.currentTarget)) } };
    const sent = await send({ method: 'PATCH', path: `/api/v1/enquiries/${enquiryId}`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    setState(sent.ok ? 'Saved. Plan again under Kits.' : '');
    if (sent.ok) router.refresh();
  }

  return (
    <form onSubmit={submit}>
      {trouble !== '' && (
        <p className="notice refusal" role="alert">
          {trouble}
        </p>
      )}
      {SITE_GROUPS.map((group) => (
        <fieldset className="panel" key={group.title}>
          <legend>{group.title}</legend>
          <div className="fields">
            {group.fields.map((field) => (
              <SiteInput key={field.key} field={field} value={site[field.key]} />
            ))}
          </div>
        </fieldset>
      ))}
      <p className="tools">
        <button className="main" type="submit">
          Save the site
        </button>
        <span aria-live="polite">{state}</span>
      </p>
    </form>
  );
}

function SiteInput({ field, value }: { readonly field: SiteField; readonly value: unknown }) {
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
function valuesOf(form: FormData): Readonly<Record<string, unknown>> {
  const fields = SITE_GROUPS.flatMap((group) => group.fields);
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
