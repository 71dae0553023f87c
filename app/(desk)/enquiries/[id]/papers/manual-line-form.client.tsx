'use client';
import { type FormEvent, useState } from 'react';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import { decimalText } from '#lib/money/currency.ts';
import { readAmount } from '#lib/money/read-amount.ts';
import { MANUAL_KINDS, type ManualKind } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';
import type { PriceView } from '#lib/services/quotes/price-view.ts';
import { Field, FormEnd, SelectField } from './price-fields.client.tsx';
import sheet from './price-sheet.module.css';

type Line = PriceChoices['lines'][number];

interface FormProps {
  readonly line: Line | null;
  readonly view: Pick<PriceView, 'currency' | 'priceList' | 'taxes' | 'taxOf'>;
  readonly busy: boolean;
  readonly onKeep: (line: Line) => void;
  readonly onClose: () => void;
}

/** Every field as it is typed; read only when the line is kept. */
type Draft = Readonly<
  Record<
    'item' | 'kind' | 'text' | 'quantity' | 'unit' | 'price' | 'per' | 'tax' | 'house' | 'from' | 'until' | 'cost',
    string
  >
>;

export function ManualLineForm({ line, view, busy, onKeep, onClose }: FormProps) {
  const [draft, setDraft] = useState<Draft>(draftOf(line, view));
  const [problem, setProblem] = useState('');
  const set = (field: keyof Draft) => (value: string) => setDraft({ ...draft, [field]: value });

  function keep(event: FormEvent): void {
    event.preventDefault();
    const read = readLine({ draft, id: line?.id ?? crypto.randomUUID(), currency: view.currency });
    if (typeof read === 'string') setProblem(read);
    else onKeep(read);
  }

  return (
    <form onSubmit={keep} noValidate>
      <h2 id="line-title">{line === null ? 'Add a line' : 'Change the line'}</h2>
      <div className={sheet.fields}>
        <SelectField
          label="From the price list"
          value={draft.item}
          choices={[
            { value: '', name: 'not from the list' },
            ...view.priceList.map(({ id, text }) => ({ value: id, name: text })),
          ]}
          onChange={(item) => setDraft(fromList({ draft, item, view }))}
          wide="yes"
        />
        <SelectField
          label="Kind"
          value={draft.kind}
          choices={MANUAL_KINDS.map((kind) => ({ value: kind, name: kind }))}
          onChange={(kind) => setDraft({ ...draft, kind, tax: taxFor(kind, view) })}
        />
        <Field label="Text on the quote" value={draft.text} onChange={set('text')} wide="yes" />
        <Field label="Quantity" value={draft.quantity} onChange={set('quantity')} inputMode="decimal" />
        <SelectField
          label="Unit"
          value={draft.unit}
          choices={MANUAL_UNITS.map((unit) => ({ value: unit, name: unit }))}
          onChange={set('unit')}
        />
        <Field label={`Price each, ${view.currency}`} value={draft.price} onChange={set('price')} inputMode="decimal" />
        <SelectField
          label="Charged"
          value={draft.per}
          choices={[
            { value: 'once', name: 'once' },
            { value: 'day', name: 'for each charged day' },
          ]}
          onChange={set('per')}
        />
        <SelectField
          label="Tax"
          value={draft.tax}
          choices={view.taxes.map(({ code, name }) => ({ value: code, name: `${code}, ${name}` }))}
          onChange={set('tax')}
        />
        {draft.kind === 're-hired' ? <ReHiredFields draft={draft} set={set} currency={view.currency} /> : null}
      </div>
      <FormEnd
        problem={problem}
        busy={busy}
        words={line === null ? 'Add the line' : 'Keep the change'}
        onClose={onClose}
      />
    </form>
  );
}

interface ReHiredProps {
  readonly draft: Draft;
  readonly set: (field: keyof Draft) => (value: string) => void;
  readonly currency: string;
}

function ReHiredFields({ draft, set, currency }: ReHiredProps) {
  return (
    <>
      <Field label="Hired in from" value={draft.house} onChange={set('house')} wide="yes" />
      <Field label="First day" value={draft.from} onChange={set('from')} type="date" />
      <Field label="Back on (not hired any more)" value={draft.until} onChange={set('until')} type="date" />
      <Field label={`Costs us in all, ${currency}`} value={draft.cost} onChange={set('cost')} inputMode="decimal" />
    </>
  );
}

function draftOf(line: Line | null, view: FormProps['view']): Draft {
  const money = (minor: number | undefined) => (minor === undefined ? '' : decimalText(minor, view.currency));
  return {
    item: line?.list_item ?? '',
    kind: line?.kind ?? 'transport',
    text: line?.text ?? '',
    quantity: String(line?.quantity ?? 1),
    unit: line?.unit ?? 'piece',
    price: money(line?.unit_minor),
    per: line?.per ?? 'once',
    tax: line?.tax ?? taxFor('transport', view),
    house: line?.rehired?.house ?? '',
    from: line?.rehired?.starts_on ?? '',
    until: line?.rehired?.ends_before ?? '',
    cost: money(line?.rehired?.cost_minor),
  };
}

interface ListChoice {
  readonly draft: Draft;
  readonly item: string;
  readonly view: FormProps['view'];
}

function fromList({ draft, item, view }: ListChoice): Draft {
  const found = view.priceList.find(({ id }) => id === item);
  if (found === undefined) return { ...draft, item: '' };
  const { kind, text, unit, per, unit_minor } = found;
  return {
    ...draft,
    item,
    kind,
    text,
    unit,
    per,
    price: decimalText(unit_minor, view.currency),
    tax: taxFor(kind, view),
  };
}

const TAX_AS: Readonly<Record<ManualKind, keyof PriceView['taxOf']>> = {
  transport: 'delivery',
  'operated hire': 'labour',
  training: 'labour',
  consumables: 'sale',
  sale: 'sale',
  're-hired': 'hire',
  'made to fit': 'sale',
};

function taxFor(kind: string, { taxOf }: FormProps['view']): string {
  const known = MANUAL_KINDS.find((name) => name === kind) ?? 'sale';
  return taxOf[TAX_AS[known]];
}

interface Typed {
  readonly draft: Draft;
  readonly id: string;
  readonly currency: string;
}

/** The line, or a sentence that says what to type. */
function readLine({ draft, id, currency }: Typed): Line | string {
  const kind = MANUAL_KINDS.find((name) => name === draft.kind) ?? 'sale';
  const unit = MANUAL_UNITS.find((name) => name === draft.unit) ?? 'piece';
  const quantity = Number(draft.quantity.trim().replace(',', '.'));
  const unit_minor = readAmount(draft.price, currency);
  const cost_minor = readAmount(draft.cost, currency);
  if (draft.text.trim() === '') return 'Type what the line is, as it should stand on the quote.';
  if (!(quantity > 0)) return 'Type a quantity above nought, for example 2 or 1.5.';
  if (unit_minor === null) return `Type the price of one, for example 98.50; ${currency} has no other decimals.`;
  if (kind === 're-hired') {
    if (draft.house.trim() === '' || draft.from === '' || draft.until === '' || cost_minor === null)
      return 'Say from which house it comes, for which days, and what it costs us.';
  }
  return {
    id,
    kind,
    text: draft.text.trim(),
    quantity,
    unit,
    unit_minor,
    per: draft.per === 'day' ? 'day' : 'once',
    tax: draft.tax,
    list_item: draft.item === '' ? null : draft.item,
    rehired:
      kind === 're-hired' && cost_minor !== null
        ? { house: draft.house.trim(), starts_on: draft.from, ends_before: draft.until, cost_minor }
        : null,
  };
}
