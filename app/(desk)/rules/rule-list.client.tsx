'use client';
import { useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';

export interface RuleRow {
  readonly id: string;
  readonly topic: string;
  readonly title: string;
  readonly severity: 'refusal' | 'warning' | 'note';
  readonly source: string;
  readonly about: string;
}

const SEVERITIES = ['refusal', 'warning', 'note'] as const;

/** Every rule, by topic, filtered by words and severity. */
export function RuleList({ rules }: { readonly rules: readonly RuleRow[] }) {
  const [text, setText] = useState('');
  const [severity, setSeverity] = useState('');
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = rules.filter((rule) => (severity === '' || rule.severity === severity) && holds(rule, words));
  const topics = [...new Set(shown.map((rule) => rule.topic))];
  return (
    <>
      <search className={styles.row}>
        <label className={styles.field}>
          Words of a rule
          <input
            className={styles.input}
            type="search"
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <label className={styles.field}>
          Severity
          <select className={styles.input} value={severity} onChange={(event) => setSeverity(event.target.value)}>
            <option value="">All</option>
            {SEVERITIES.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <span aria-live="polite">
          {shown.length} {shown.length === 1 ? 'rule' : 'rules'}
        </span>
      </search>
      {shown.length === 0 ? <p className={styles.soft}>No rule holds all these words.</p> : null}
      {topics.map((topic) => (
        <TopicView key={topic} topic={topic} rules={shown.filter((rule) => rule.topic === topic)} />
      ))}
    </>
  );
}

function TopicView({ topic, rules }: { readonly topic: string; readonly rules: readonly RuleRow[] }) {
  return (
    <section className={styles.panel} aria-label={topic}>
      <h2>{topic.charAt(0).toUpperCase() + topic.slice(1)}</h2>
      <PlanWide label={`Rules: ${topic}`}>
        <table className={styles.rules}>
          <thead>
            <tr>
              <th scope="col">Severity</th>
              <th scope="col">Rule</th>
              <th scope="col">Looks at</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {rules.map((rule) => (
              <RuleView key={rule.id} rule={rule} />
            ))}
          </tbody>
        </table>
      </PlanWide>
    </section>
  );
}

function RuleView({ rule }: { readonly rule: RuleRow }) {
  return (
    <tr id={rule.id}>
      <td>
        <span className={styles[rule.severity]}>{rule.severity}</span>
      </td>
      <th scope="row" className={styles.sentence}>
        {rule.title}
        <br />
        <span className={styles.soft}>{rule.id}</span>
      </th>
      <td>{rule.about}</td>
      <td className={styles.sentence}>{rule.source}</td>
    </tr>
  );
}

function holds(rule: RuleRow, words: readonly string[]): boolean {
  const text = `${rule.id} ${rule.topic} ${rule.title} ${rule.about} ${rule.source}`.toLowerCase();
  return words.every((word) => text.includes(word));
}
