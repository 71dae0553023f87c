import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import type { HouseField, HouseSection } from '#lib/contracts/house-fields.ts';
import { decimalText } from '#lib/money/currency.ts';
import { valueAt } from './record-value.ts';

interface HouseFactsProps {
  readonly sections: readonly HouseSection[];
  readonly value: unknown;
  readonly currency: string;
}

type RowsField = Extract<HouseField, { readonly kind: 'rows' }>;

/** The house for those who may read it and not change it. */
export function HouseFacts({ sections, value, currency }: HouseFactsProps) {
  return sections.map(({ title, fields }) => (
    <div key={title}>
      <h3>{title}</h3>
      {fields.some(({ kind }) => kind !== 'rows') && (
        <dl>
          {fields.map((field) =>
            field.kind === 'rows' ? null : (
              <HouseFact key={field.path} label={field.label} texts={told(field, { value, currency })} />
            ),
          )}
        </dl>
      )}
      {fields.map((field) =>
        field.kind === 'rows' ? <HouseRows key={field.path} field={field} value={value} currency={currency} /> : null,
      )}
    </div>
  ));
}

function HouseFact({ label, texts }: { readonly label: string; readonly texts: readonly string[] }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>
        {texts.map((text) => (
          <div key={text}>{text}</div>
        ))}
      </dd>
    </>
  );
}

function HouseRows({ field, value, currency }: Told & { readonly field: RowsField }) {
  const held = valueAt(value, field.path);
  const rows: readonly unknown[] = Array.isArray(held) ? held : [];
  if (rows.length === 0) return <p>{field.label}: none</p>;
  return (
    <PlanWide label={field.label}>
      <table className={styles.table}>
        <thead>
          <tr>
            {field.columns.map((column) => (
              <th key={column.path} scope="col" className={isFigure(column) ? styles.number : undefined}>
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={JSON.stringify(row)}>
              {field.columns.map((column) => (
                <td key={column.path} className={isFigure(column) ? styles.number : undefined}>
                  {told(column, { value: row, currency }).join(', ')}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}

function isFigure({ kind }: HouseField): boolean {
  return kind === 'number' || kind === 'amount';
}

interface Told {
  readonly value: unknown;
  readonly currency: string;
}

/** One text, or one for each line. */
function told(field: HouseField, { value, currency }: Told): readonly string[] {
  const held = valueAt(value, field.path);
  if (held === undefined || held === null || held === '') return ['none'];
  if (Array.isArray(held)) return held.length === 0 ? ['none'] : held.map(String);
  return [field.kind === 'amount' ? decimalText(Number(held), currency) : String(held)];
}
