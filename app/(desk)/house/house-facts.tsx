import type { HouseField, HouseSection } from '#lib/contracts/house-fields.ts';
import { decimalText } from '#lib/money/currency.ts';
import { valueAt } from './record-value.ts';

interface HouseFactsProps {
  readonly sections: readonly HouseSection[];
  readonly value: unknown;
  readonly currency: string;
}

/** The house for those who may read it and not change it. */
export function HouseFacts({ sections, value, currency }: HouseFactsProps) {
  return sections.map(({ title, fields }) => (
    <div key={title}>
      <h3>{title}</h3>
      <dl>
        {fields.map((field) => (
          <HouseFact key={field.path} label={field.label} text={told(field, { value, currency })} />
        ))}
      </dl>
    </div>
  ));
}

function HouseFact({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>{text}</dd>
    </>
  );
}

interface Told {
  readonly value: unknown;
  readonly currency: string;
}

function told(field: HouseField, { value, currency }: Told): string {
  const held = valueAt(value, field.path);
  if (held === undefined || held === null || held === '') return 'none';
  if (field.kind === 'rows' && Array.isArray(held))
    return held
      .map((row: unknown) => field.columns.map((column) => told(column, { value: row, currency })).join(', '))
      .join('; ');
  if (Array.isArray(held)) return held.length === 0 ? 'none' : held.join('; ');
  return field.kind === 'amount' ? decimalText(Number(held), currency) : String(held);
}
