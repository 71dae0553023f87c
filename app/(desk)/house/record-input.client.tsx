'use client';
import { useState } from 'react';
import type { FieldTrouble } from '#app/_lib/send.client.tsx';
import type { HouseField } from '#lib/contracts/house-fields.ts';
import { decimalText } from '#lib/money/currency.ts';
import styles from '../equipment/equipment.module.css';
import { minorOf } from '../equipment/minor-of.ts';
import { valueAt } from './record-value.ts';

interface RecordInputProps {
  readonly field: HouseField;
  readonly path: string;
  readonly label: string;
  readonly currency: string;
  readonly value: unknown;
  readonly problems: readonly FieldTrouble[];
  readonly onChange: (path: string, next: unknown) => void;
  /** In tables the head of the column is the label that is seen. */
  readonly hidden?: true;
}

export function RecordInput({ field, path, label, currency, value, problems, onChange, hidden }: RecordInputProps) {
  const held = valueAt(value, path);
  const [text, setText] = useState(() => textOf(field, { held, currency }));
  const trouble = problems.find((problem) => problem.path === path || problem.path.startsWith(`${path}.`));
  const id = `house-${path}`;
  const change = (typed: string) => {
    setText(typed);
    onChange(path, typedValue(field, { typed, currency }));
  };
  const control = {
    id,
    'aria-label': hidden ? label : undefined,
    'aria-invalid': trouble !== undefined,
    'aria-describedby': `${id}-told`,
    value: text,
  };
  return (
    <div className={styles.field}>
      {hidden ? null : (
        <label htmlFor={id}>
          {label}
          {field.kind === 'amount' ? <span className={styles.unit}> {currency}</span> : null}
        </label>
      )}
      {field.kind === 'choice' ? (
        <select {...control} onChange={(event) => change(event.target.value)}>
          {field.choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : field.kind === 'lines' ? (
        <textarea {...control} rows={hidden ? 2 : 4} onChange={(event) => change(event.target.value)} />
      ) : (
        <input
          {...control}
          inputMode={field.kind === 'text' ? 'text' : 'decimal'}
          size={field.kind === 'text' ? 18 : 8}
          onChange={(event) => change(event.target.value)}
        />
      )}
      <span id={`${id}-told`} className={styles.hint}>
        {hidden ? '' : field.help}
        {trouble === undefined ? null : <span className={styles.trouble}> {trouble.sentence}</span>}
      </span>
    </div>
  );
}

interface Held {
  readonly held: unknown;
  readonly currency: string;
}

function textOf(field: HouseField, { held, currency }: Held): string {
  if (held === undefined || held === null) return '';
  if (Array.isArray(held)) return held.join('\n');
  return field.kind === 'amount' && typeof held === 'number' ? decimalText(held, currency) : String(held);
}

interface Typed {
  readonly typed: string;
  readonly currency: string;
}

/** What cannot be read is sent as it was typed, so that the house says what is wrong with it. */
function typedValue(field: HouseField, { typed, currency }: Typed): unknown {
  const text = typed.trim();
  switch (field.kind) {
    case 'lines':
      return typed
        .split('\n')
        .map((line) => line.trim())
        .filter((line) => line !== '');
    case 'amount':
      return minorOf(text, currency) ?? text;
    case 'number':
      return text !== '' && Number.isFinite(Number(text)) ? Number(text) : text;
    case 'choice':
      return field.choices.find((choice) => String(choice) === typed);
    default:
      return text === '' && field.path === 'reason' ? undefined : typed;
  }
}
