'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import { AlreadyHere } from './already-here.client.tsx';
import { type CustomerField, type CustomerGroup, customerGroups } from './customer-fields.ts';
import { typedIdentity } from './typed.ts';

interface CustomerFormProps {
  readonly bands: readonly { readonly id: string; readonly name: string }[];
  /** Absent for a new one. */
  readonly customer?: {
    readonly id: number;
    readonly version: number;
    readonly name: string;
    readonly facts: Readonly<Record<string, unknown>>;
  };
}

export function CustomerForm({ bands, customer }: CustomerFormProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);
  const [typed, setTyped] = useState({
    name: customer?.name ?? '',
    email: String(customer?.facts.email ?? ''),
    telephone: String(customer?.facts.telephone ?? ''),
  });
  const groups = customerGroups(bands);

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    setBusy(true);
    const form = new FormData(event.currentTarget);
    const facts = factsOf(form, groups);
    const name = String(form.get('name') ?? '');
    const sent = await send<{ readonly id?: number }>(
      customer === undefined
        ? { method: 'POST', path: '/api/v1/customers', body: { name, facts } }
        : {
            method: 'PATCH',
            path: `/api/v1/customers/${customer.id}`,
            body: { version: customer.version, name, facts },
          },
    );
    setBusy(false);
    if (!sent.ok) return setTrouble(sent.sentence);
    router.push(`/customers/${customer?.id ?? sent.value.id}`);
    router.refresh();
  }

  return (
    <form onSubmit={submit} onChange={(event) => setTyped(typedIdentity(new FormData(event.currentTarget)))}>
      <Trouble sentence={trouble} />
      <div className="panel">
        <div className="fields">
          <div>
            <label htmlFor="customer-name">Name</label>
            <input
              id="customer-name"
              name="name"
              required
              maxLength={200}
              defaultValue={typed.name}
              autoComplete="off"
            />
            <small className="field-help">As it stands on papers.</small>
          </div>
        </div>
      </div>
      <AlreadyHere kind="customer" typed={typed} {...(customer === undefined ? {} : { self: customer.id })} />
      <Groups groups={groups} facts={customer?.facts ?? {}} />
      <p className="tools">
        <button className="main" type="submit" disabled={busy}>
          {busy ? 'Saving…' : customer === undefined ? 'Make the customer' : 'Save'}
        </button>
      </p>
    </form>
  );
}

interface GroupsProps {
  readonly groups: readonly CustomerGroup[];
  readonly facts: Readonly<Record<string, unknown>>;
}

function Groups({ groups, facts }: GroupsProps) {
  return groups.map((group) => (
    <fieldset className="panel" key={group.title}>
      <legend>{group.title}</legend>
      <div className="fields">
        {group.fields.map((field) => (
          <FieldInput key={field.key} field={field} value={facts[field.key]} />
        ))}
      </div>
    </fieldset>
  ));
}

function factsOf(...[form, groups]: readonly [FormData, readonly CustomerGroup[]]): Readonly<Record<string, unknown>> {
  const fields = groups.flatMap((group) => group.fields);
  return Object.fromEntries(
    fields.map((field) => [field.key, readField(field, String(form.get(field.key) ?? '').trim())]),
  );
}

function FieldInput({ field, value }: { readonly field: CustomerField; readonly value: unknown }) {
  const id = `customer-${field.key}`;
  const text = Array.isArray(value) ? value.join('\n') : value === undefined || value === null ? '' : String(value);
  const named = { id, name: field.key, defaultValue: text, 'aria-describedby': `${id}-help` };
  return (
    <div>
      <label htmlFor={id}>{field.label}</label>
      {field.kind === 'choice' ? (
        <select {...named}>
          {field.choices?.map(([choice, words]) => (
            <option key={choice} value={choice}>
              {words}
            </option>
          ))}
        </select>
      ) : field.kind === 'lines' ? (
        <textarea {...named} rows={3} />
      ) : (
        <input {...named} type={field.kind} step="any" />
      )}
      <small className="field-help" id={`${id}-help`}>
        {field.help}
      </small>
    </div>
  );
}

/** What may be open is sent as null, so that it is open again. */
const MAY_BE_NULL = [
  'payment_days',
  'discount_percent',
  'delivery_band',
  'currency',
  'units',
  'date_format',
  'number_format',
  'language',
];

function readField({ key, kind }: CustomerField, text: string): unknown {
  if (key === 'address')
    return text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '');
  if (text === '' && MAY_BE_NULL.includes(key)) return null;
  if (kind === 'number') return Number(text);
  return key === 'currency' ? text.toUpperCase() : text;
}
