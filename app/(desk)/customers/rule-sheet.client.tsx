'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { RuleKindSpec } from '#lib/contracts/house-rule-values.ts';
import type { CustomerView } from '#lib/services/customers/open-customer.ts';
import { NewRule } from './new-rule.client.tsx';

type Rules = readonly CustomerView['facts']['house_rules'][number][];

interface RuleSheetProps {
  /** Where the rules are kept, and what is sent along with them. */
  readonly keptAt: {
    readonly path: string;
    readonly body: Readonly<Record<string, unknown>>;
    readonly facts: Readonly<Record<string, unknown>>;
  };
  readonly rules: Rules;
  readonly kinds: readonly RuleKindSpec[];
  /** What stands there while there is no rule. */
  readonly none: string;
}

/** Rules of a customer or of a site; each change is saved at once, and taken back by one button. */
export function RuleSheet({ keptAt, rules, kinds, none }: RuleSheetProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [before, setBefore] = useState<Rules | null>(null);

  async function save(next: Rules): Promise<void> {
    const body = { ...keptAt.body, facts: { ...keptAt.facts, house_rules: next } };
    const sent = await send({ method: 'PATCH', path: keptAt.path, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    setBefore(rules);
    router.refresh();
  }

  const turned = (id: string): Rules =>
    rules.map((rule) => {
      if (rule.id !== id) return rule;
      const { off, ...on } = rule;
      return off === true ? on : { ...on, off: true as const };
    });

  return (
    <>
      <Trouble sentence={trouble} />
      {rules.length === 0 ? (
        <p className="empty">{none}</p>
      ) : (
        <div className="wide">
          <table>
            <thead>
              <tr>
                <th>Rule</th>
                <th className="wide-only">What it does</th>
                <th>
                  <span className="unseen">Change</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rules.map((rule) => (
                <RuleRow
                  key={rule.id}
                  rule={rule}
                  label={kinds.find(({ kind }) => kind === rule.kind)?.label ?? rule.kind}
                  turn={() => save(turned(rule.id))}
                  takeOut={() => save(rules.filter(({ id }) => id !== rule.id))}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {before !== null && (
        <p className="tools" style={{ marginTop: 'var(--space-3)' }} aria-live="polite">
          <span>Saved.</span>
          <button type="button" onClick={() => save(before)}>
            Undo
          </button>
        </p>
      )}
      <NewRule kinds={kinds} taken={rules.map(({ id }) => id)} add={(rule) => save([...rules, rule])} />
    </>
  );
}

interface RuleRowProps {
  readonly rule: Rules[number];
  readonly label: string;
  readonly turn: () => void;
  readonly takeOut: () => void;
}

function RuleRow({ rule, label, turn, takeOut }: RuleRowProps) {
  return (
    <tr>
      <td>
        {rule.sentence}
        {rule.off === true && <small className="beside">switched off</small>}
      </td>
      <td className="wide-only">
        {label}: {rule.value}
      </td>
      <td>
        <span className="tools" style={{ margin: 0 }}>
          <button type="button" onClick={turn}>
            {rule.off === true ? 'Switch on' : 'Switch off'}
            <span className="unseen">: {rule.sentence}</span>
          </button>
          <button type="button" onClick={takeOut}>
            Take out<span className="unseen">: {rule.sentence}</span>
          </button>
        </span>
      </td>
    </tr>
  );
}
