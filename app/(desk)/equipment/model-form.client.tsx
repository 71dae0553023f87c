'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { type ReactNode, useState } from 'react';
import { type FieldTrouble, send } from '#app/_lib/send.client.tsx';
import type { EquipmentField } from '#lib/contracts/equipment-field.ts';
import type { SavedModel } from '#lib/services/equipment/save-model.ts';
import type { ChangeToTry } from '#lib/services/house/try-change.ts';
import { TrialBench } from '../trial-bench.client.tsx';
import styles from './equipment.module.css';
import { FieldInput } from './field-input.client.tsx';

type Fields = Readonly<Record<string, string>>;

interface ModelFormProps {
  readonly role: Extract<ChangeToTry, { kind: 'model' }>['role'];
  readonly fields: readonly EquipmentField[];
  readonly start: Fields;
  readonly existing: { readonly number: string; readonly version: number } | null;
}

const RATES = 'Rates to begin with, and value';

/** Every fact of a model as a field with its unit, what it is and its range; the house judges it when it is saved. */
export function ModelForm({ role, fields, start, existing }: ModelFormProps) {
  const router = useRouter();
  const [texts, setTexts] = useState<Fields>(start);
  const [troubles, setTroubles] = useState<readonly FieldTrouble[]>([]);
  const [said, setSaid] = useState('');
  const [saved, setSaved] = useState<SavedModel | null>(null);
  const [trial, setTrial] = useState<{ readonly id: number; readonly change: ChangeToTry } | null>(null);
  const shown = fields.filter(({ when }) => when === null || when.values.includes(texts[when.path] ?? ''));
  /** What is not shown is not sent, so that no fact of another kind stays behind. */
  const asked = Object.fromEntries(shown.map(({ path }) => [path, texts[path] ?? '']));
  const save = async () => {
    const body = {
      role,
      fields: asked,
      ...(existing === null ? {} : { existing }),
    };
    const sent = await send<SavedModel>({ method: 'POST', path: '/api/v1/equipment', body });
    setTroubles(sent.ok ? [] : sent.problems);
    setSaid(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    if (sent.value.warnings.length > 0) setSaved(sent.value);
    else router.push(`/equipment/${sent.value.number}`);
  };
  if (saved !== null) return <SavedWithWarnings saved={saved} />;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
      noValidate
    >
      {[...new Set(shown.map(({ group }) => group))].map((group) => (
        <FieldGroup
          key={group}
          group={group}
          number={existing?.number ?? null}
          fields={shown.filter((field) => field.group === group)}
          texts={texts}
          troubles={troubles}
          onChange={(path, value) => setTexts({ ...texts, [path]: value })}
        >
          {group === 'Model' && texts.counted === 'yes' ? <ShelfWords /> : null}
        </FieldGroup>
      ))}
      {trial === null ? null : <TrialBench key={trial.id} change={trial.change} />}
      <div className={styles.bar}>
        <button type="submit" className="main">
          Save
        </button>
        {existing === null ? null : (
          <button
            type="button"
            onClick={() => setTrial({ id: (trial?.id ?? 0) + 1, change: { kind: 'model', role, fields: asked } })}
          >
            What would this change?
          </button>
        )}
        <Link className="button" href={existing === null ? '/equipment' : `/equipment/${existing.number}`}>
          Leave it
        </Link>
        <span role="status" className={styles.trouble}>
          {said}
        </span>
      </div>
    </form>
  );
}

interface FieldGroupProps {
  readonly group: string;
  /** Of a model that is there already. */
  readonly number: string | null;
  readonly fields: readonly EquipmentField[];
  readonly texts: Fields;
  readonly troubles: readonly FieldTrouble[];
  readonly onChange: (path: string, value: string) => void;
  readonly children: ReactNode;
}

function FieldGroup({ group, number, fields, texts, troubles, onChange, children }: FieldGroupProps) {
  return (
    <fieldset className={styles.group}>
      <legend>{group}</legend>
      {group === RATES && number !== null ? <RatesAway number={number} /> : null}
      <div className="fields">
        {fields
          .filter(({ path }) => !(number !== null && path.startsWith('rates.')))
          .map((field) => (
            <FieldInput
              key={field.path}
              field={field}
              value={texts[field.path] ?? ''}
              fixed={number !== null && field.path === 'number'}
              trouble={troubles.find(({ path }) => path === field.path)?.sentence ?? ''}
              onChange={(value) => onChange(field.path, value)}
            />
          ))}
        {children}
      </div>
    </fieldset>
  );
}

function ShelfWords() {
  return (
    <p className="soft">
      Pieces without serial numbers are held by number a depot: the yard counts them under{' '}
      <Link href="/yard/stock?kind=counted">its stock</Link>.
    </p>
  );
}

function RatesAway({ number }: { readonly number: string }) {
  return (
    <p className="soft">
      Rates change on a card with the day from which they hold: <Link href={`/equipment/${number}`}>see its rates</Link>
      .
    </p>
  );
}

function SavedWithWarnings({ saved }: { readonly saved: SavedModel }) {
  return (
    <section className="notice warning">
      <p>
        <strong>{saved.number} is saved.</strong> The catalogue does not quite hang together around it:
      </p>
      <ul>
        {saved.warnings.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p>
        <Link className="button" href={`/equipment/${saved.number}/edit`}>
          Change it again
        </Link>{' '}
        <Link className="button" href={`/equipment/${saved.number}`}>
          Look at it
        </Link>
      </p>
    </section>
  );
}
