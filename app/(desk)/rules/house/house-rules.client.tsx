'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type FieldTrouble, send } from '#app/_lib/send.client.tsx';
import type { HouseRuleJson } from '#lib/contracts/house.ts';
import type { RuleKindSpec } from '#lib/contracts/house-rule-values.ts';
import styles from '../../equipment/equipment.module.css';
import { TrialBench } from '../../trial-bench.client.tsx';
import { RuleFields } from './rule-fields.client.tsx';

interface HouseRulesEditorProps {
  readonly rules: readonly HouseRuleJson[];
  readonly version: number;
  readonly specs: readonly RuleKindSpec[];
  readonly mayChange: boolean;
}

interface Row {
  readonly key: number;
  readonly rule: HouseRuleJson;
}

/** The rules of the house: added, changed, switched off, tried on open enquiries, and saved together. */
export function HouseRulesEditor({ rules, version, specs, mayChange }: HouseRulesEditorProps) {
  const router = useRouter();
  const [rows, setRows] = useState<readonly Row[]>(rules.map((rule, key) => ({ key, rule })));
  const [lastKey, setLastKey] = useState(rules.length);
  const [said, setSaid] = useState('');
  const [problems, setProblems] = useState<readonly FieldTrouble[]>([]);
  const [trial, setTrial] = useState(0);
  const asked = rows.map(({ rule }) => rule);
  const isChanged = JSON.stringify(asked) !== JSON.stringify(rules);
  const save = async () => {
    const body = { part: 'rules', version, rules: asked };
    const sent = await send({ method: 'POST', path: '/api/v1/house', body });
    setSaid(sent.ok ? '' : sent.sentence);
    setProblems(sent.ok ? [] : sent.problems);
    if (sent.ok) router.refresh();
  };
  const add = () => {
    const [spec] = specs;
    if (spec === undefined) return;
    setLastKey(lastKey + 1);
    const rule = { id: `rule-${lastKey + 1}`, kind: spec.kind, value: spec.choices[0] ?? '', sentence: spec.sentence };
    setRows([...rows, { key: lastKey + 1, rule }]);
  };
  const change = (key: number, rule: HouseRuleJson) =>
    setRows(rows.map((row) => (row.key === key ? { key, rule } : row)));
  return (
    <>
      {rows.length === 0 ? <p className="empty">The house has no rules of its own yet.</p> : null}
      <ol className={styles.changes}>
        {rows.map(({ key, rule }, index) => (
          <li key={key} className="panel">
            <RuleFields
              id={`rule-${key}`}
              rule={rule}
              specs={specs}
              mayChange={mayChange}
              problems={problems.filter(({ path }) => path.startsWith(`${index}.`))}
              onChange={(next) => change(key, next)}
              onRemove={() => setRows(rows.filter((row) => row.key !== key))}
            />
          </li>
        ))}
      </ol>
      {trial > 0 ? <TrialBench key={trial} change={{ kind: 'rules', rules: asked }} /> : null}
      {mayChange ? (
        <div className={styles.bar}>
          <button type="button" onClick={add}>
            Add a rule
          </button>
          <button type="button" disabled={!isChanged} onClick={() => setTrial(trial + 1)}>
            What would this change?
          </button>
          <button type="button" className="main" disabled={!isChanged} onClick={save}>
            Save the rules
          </button>
          {isChanged ? (
            <button type="button" className="quiet" onClick={() => setRows(rules.map((rule, key) => ({ key, rule })))}>
              Leave them as they were
            </button>
          ) : null}
          <span role="status" className={styles.trouble}>
            {said}
          </span>
        </div>
      ) : (
        <p className="soft">Only an administrator changes the rules of the house.</p>
      )}
    </>
  );
}
