'use client';

import { type FormEvent, useState } from 'react';
import type { RuleKindSpec } from '#lib/contracts/house-rule-values.ts';
import type { CustomerView } from '#lib/services/customers/open-customer.ts';

type Rule = CustomerView['facts']['house_rules'][number];

interface NewRuleProps {
  readonly kinds: readonly RuleKindSpec[];
  readonly taken: readonly string[];
  readonly add: (rule: Rule) => Promise<void>;
}

/** A rule is a kind, a value, and the sentence in which the customer says it. */
export function NewRule({ kinds, taken, add }: NewRuleProps) {
  const [kind, setKind] = useState(kinds[0]);
  const [value, setValue] = useState(kinds[0]?.choices[0] ?? '');
  const [sentence, setSentence] = useState('');
  if (kind === undefined) return null;
  const unit = kind.number?.unit ?? '';
  const proposed = kind.sentence.replace(
    '…',
    [value, unit === 'persons' || unit === 'turns' ? '' : unit].join(' ').trim(),
  );

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    if (kind === undefined) return;
    const words = sentence.trim() === '' ? proposed : sentence.trim();
    await add({ id: freeId({ kind: kind.kind, value, taken }), kind: kind.kind, value, sentence: words });
    setSentence('');
  }

  return (
    <form className="panel" onSubmit={submit} style={{ marginTop: 'var(--space-4)' }} aria-label="New rule">
      <h2>New rule</h2>
      <div className="fields">
        <div>
          <label htmlFor="rule-kind">Kind</label>
          <select
            id="rule-kind"
            value={kind.kind}
            aria-describedby="rule-kind-help"
            onChange={(event) => {
              const next = kinds.find((one) => one.kind === event.target.value);
              setKind(next);
              setValue(next?.choices[0] ?? '');
            }}
          >
            {kinds.map((one) => (
              <option key={one.kind} value={one.kind}>
                {one.label}
              </option>
            ))}
          </select>
          <small className="field-help" id="rule-kind-help">
            {kind.help}
          </small>
        </div>
        <ValueField kind={kind} value={value} setValue={setValue} />
        <div>
          <label htmlFor="rule-sentence">As they say it</label>
          <input
            id="rule-sentence"
            value={sentence}
            maxLength={300}
            placeholder={proposed}
            onChange={(event) => setSentence(event.target.value)}
          />
          <small className="field-help">It is printed on papers and in reasons. Left open: “{proposed}”</small>
        </div>
      </div>
      <p className="tools" style={{ marginTop: 'var(--space-3)' }}>
        <button className="main" type="submit">
          Add the rule
        </button>
      </p>
    </form>
  );
}

interface ValueFieldProps {
  readonly kind: RuleKindSpec;
  readonly value: string;
  readonly setValue: (value: string) => void;
}

function ValueField({ kind, value, setValue }: ValueFieldProps) {
  return (
    <div>
      <label htmlFor="rule-value">{kind.number === null ? 'Which' : `How much, in ${kind.number.unit}`}</label>
      {kind.number === null ? (
        <select id="rule-value" value={value} onChange={(event) => setValue(event.target.value)}>
          {kind.choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          id="rule-value"
          type="number"
          required
          step="any"
          min={kind.number.low}
          max={kind.number.high}
          value={value}
          onChange={(event) => setValue(event.target.value)}
        />
      )}
    </div>
  );
}

function freeId({
  kind,
  value,
  taken,
}: {
  readonly kind: string;
  readonly value: string;
  readonly taken: readonly string[];
}): string {
  const plain = `${kind}-${value}`
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 50);
  let id = plain;
  for (let count = 2; taken.includes(id); count += 1) id = `${plain}-${count}`;
  return id;
}
