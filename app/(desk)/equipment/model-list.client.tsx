'use client';
import { useState } from 'react';
import styles from '#app/_ui/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan-wide.tsx';

export interface ModelRow {
  readonly number: string;
  readonly name: string;
  readonly mass: string;
  readonly day: string;
  readonly week: string;
  readonly fourWeeks: string;
  readonly free: string;
  readonly facts: readonly { readonly label: string; readonly text: string }[];
}

export interface ModelGroup {
  readonly role: string;
  readonly heading: string;
  readonly models: readonly ModelRow[];
}

/** All that can be hired, by role, filtered by any words of a model. */
export function ModelList({ groups }: { readonly groups: readonly ModelGroup[] }) {
  const [text, setText] = useState('');
  const [role, setRole] = useState('');
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = groups
    .filter((group) => role === '' || group.role === role)
    .map((group) => ({ ...group, models: group.models.filter((model) => holds(model, words)) }))
    .filter((group) => group.models.length > 0);
  const count = shown.reduce((sum, group) => sum + group.models.length, 0);
  return (
    <>
      <search className={styles.row}>
        <label className={styles.field}>
          Words of a model
          <input
            className={styles.input}
            type="search"
            value={text}
            placeholder="name, number or fact"
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <label className={styles.field}>
          Role
          <select className={styles.input} value={role} onChange={(event) => setRole(event.target.value)}>
            <option value="">All roles</option>
            {groups.map((group) => (
              <option key={group.role} value={group.role}>
                {group.heading}
              </option>
            ))}
          </select>
        </label>
        <span aria-live="polite">
          {count} {count === 1 ? 'model' : 'models'}
        </span>
      </search>
      {shown.length === 0 ? <p className={styles.soft}>No model holds all these words.</p> : null}
      {shown.map((group) => (
        <GroupView key={group.role} group={group} />
      ))}
    </>
  );
}

const FIGURES = ['Mass', 'Day', 'Week', 'Four weeks', 'Free today'];

function GroupView({ group }: { readonly group: ModelGroup }) {
  return (
    <section className={styles.panel} aria-labelledby={`role-${group.role}`}>
      <h2 id={`role-${group.role}`}>{group.heading}</h2>
      <PlanWide label={`Table of ${group.heading.toLowerCase()}`}>
        <table className={styles.models}>
          <thead>
            <tr>
              <th scope="col">Model</th>
              {FIGURES.map((figure) => (
                <th scope="col" className={styles.number} key={figure}>
                  {figure}
                </th>
              ))}
              <th scope="col">Facts</th>
            </tr>
          </thead>
          <tbody>
            {group.models.map((model) => (
              <ModelView key={model.number} model={model} />
            ))}
          </tbody>
        </table>
      </PlanWide>
    </section>
  );
}

function ModelView({ model }: { readonly model: ModelRow }) {
  return (
    <tr>
      <th scope="row">
        {model.name}
        <br />
        <span className={styles.soft}>{model.number}</span>
      </th>
      <td className={styles.number}>{model.mass}</td>
      <td className={styles.number}>{model.day}</td>
      <td className={styles.number}>{model.week}</td>
      <td className={styles.number}>{model.fourWeeks}</td>
      <td className={styles.number}>{model.free}</td>
      <td className={styles.sentence}>
        <details>
          <summary>
            {model.facts.length} {model.facts.length === 1 ? 'fact' : 'facts'}
          </summary>
          <dl className={styles.facts}>
            {model.facts.map((fact) => (
              <div key={fact.label} className={styles.fact}>
                <dt>{fact.label}</dt>
                <dd>{fact.text}</dd>
              </div>
            ))}
          </dl>
        </details>
      </td>
    </tr>
  );
}

function holds(model: ModelRow, words: readonly string[]): boolean {
  const text = `${model.number} ${model.name} ${model.facts.map((fact) => `${fact.label} ${fact.text}`).join(' ')}`;
  const lower = text.toLowerCase();
  return words.every((word) => lower.includes(word));
}
