'use client';
import type { EquipmentField } from '#lib/contracts/equipment-field.ts';
import styles from './equipment.module.css';

interface FieldInputProps {
  readonly field: EquipmentField;
  readonly value: string;
  readonly fixed: boolean;
  readonly trouble: string;
  readonly onChange: (value: string) => void;
}

/** One field: label with its unit, the control, what it is, its range, and what is wrong with it. */
export function FieldInput({ field, value, fixed, trouble, onChange }: FieldInputProps) {
  const id = `field-${field.path}`;
  const told = `${id}-told`;
  const control = {
    id,
    disabled: fixed,
    'aria-describedby': told,
    'aria-invalid': trouble !== '',
  };
  return (
    <div className={styles.field}>
      <label htmlFor={id}>
        {field.label}
        {field.unit === '' || field.unit === '1' ? null : <span className={styles.unit}> {field.unit}</span>}
        {field.optional ? <span className={styles.unit}> (may be empty)</span> : null}
      </label>
      {field.choices.length > 0 && field.form !== 'choices' ? (
        <select {...control} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">{field.optional ? 'none' : 'choose'}</option>
          {field.choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : field.form === 'choices' ? (
        <Several field={field} value={value} told={told} onChange={onChange} />
      ) : field.form === 'yes or no' ? (
        <select {...control} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">{field.optional ? 'none' : 'choose'}</option>
          <option>yes</option>
          <option>no</option>
        </select>
      ) : (
        <input
          {...control}
          value={value}
          inputMode={field.form === 'number' || field.form === 'count' ? 'decimal' : 'text'}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      <span id={told} className={styles.hint}>
        {field.help}
        {field.range === null ? '' : ` From ${field.range[0]} to ${field.range[1]}.`}
        {trouble === '' ? null : <span className={styles.trouble}> {trouble}</span>}
      </span>
    </div>
  );
}

type SeveralProps = Omit<FieldInputProps, 'fixed' | 'trouble'> & { readonly told: string };

function Several({ field, value, told, onChange }: SeveralProps) {
  const chosen = value.split(';').map((one) => one.trim());
  const change = (choice: string, isOn: boolean) =>
    onChange(field.choices.filter((one) => (one === choice ? isOn : chosen.includes(one))).join('; '));
  return (
    <fieldset id={`field-${field.path}`} aria-describedby={told} aria-label={field.label}>
      {field.choices.map((choice) => (
        <label key={choice}>
          <input
            type="checkbox"
            checked={chosen.includes(choice)}
            onChange={(event) => change(choice, event.target.checked)}
          />{' '}
          {choice}
        </label>
      ))}
    </fieldset>
  );
}
