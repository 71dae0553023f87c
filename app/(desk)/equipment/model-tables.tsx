import Link from 'next/link';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { ShownMoney, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { massText } from '#lib/documents/words/print-values.ts';
import type { ModelView } from '#lib/services/equipment/list-models-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import styles from './equipment.module.css';
import type { FactText } from './fact-texts.ts';
import { RateHeads } from './rate-heads.tsx';

export interface ModelFilter {
  readonly text: string;
  readonly role: string;
  readonly source: string;
  readonly retired: boolean;
}

/** A plain form, so that what is asked for stands in the address and works before any script has loaded. */
export function ModelSearch({ filter, count }: { readonly filter: ModelFilter; readonly count: number }) {
  return (
    <search>
      <form className="tools" action="/equipment">
        <div>
          <label htmlFor="model-text">Words of a model</label>
          <input
            id="model-text"
            name="text"
            type="search"
            defaultValue={filter.text}
            placeholder="name, number or fact"
          />
        </div>
        <div>
          <label htmlFor="model-role">Role</label>
          <select id="model-role" name="role" defaultValue={filter.role}>
            <option value="">All roles</option>
            {Object.entries(ROLE_NAMES).map(([role, name]) => (
              <option key={role} value={role}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="model-source">Power source</label>
          <select id="model-source" name="source" defaultValue={filter.source}>
            <option value="">Any</option>
            <option value="battery">battery</option>
            <option value="air">air</option>
            <option value="petrol">petrol</option>
          </select>
        </div>
        <div>
          <label htmlFor="model-retired">Shown</label>
          <select id="model-retired" name="retired" defaultValue={filter.retired ? 'yes' : ''}>
            <option value="">in use</option>
            <option value="yes">retired</option>
          </select>
        </div>
        <button type="submit">Show</button>
        <output className="soft">
          {count} {count === 1 ? 'model' : 'models'}
        </output>
      </form>
    </search>
  );
}

interface Listed extends ModelView {
  readonly told: readonly FactText[];
}

interface ModelTablesProps {
  readonly models: readonly Listed[];
  readonly currency: string;
  readonly system: UnitSystem;
}

export function ModelTables({ models, currency, system }: ModelTablesProps) {
  return Object.entries(ROLE_NAMES).map(([role, heading]) => {
    const own = models.filter((model) => model.role === role);
    if (own.length === 0) return null;
    return (
      <section key={role} aria-labelledby={`role-${role}`}>
        <h2 id={`role-${role}`}>{heading}</h2>
        <PlanWide label={`Table of ${heading.toLowerCase()}`}>
          <table className={styles.models}>
            <thead>
              <tr>
                <th scope="col">Model</th>
                <th scope="col" className={styles.told}>
                  What it does
                </th>
                <th scope="col" className="number">
                  Mass
                </th>
                <RateHeads currency={currency} />
                <th scope="col" className="number">
                  Free today
                </th>
              </tr>
            </thead>
            <tbody>
              {own.map((model) => (
                <tr key={model.number}>
                  <th scope="row">
                    <Link href={`/equipment/${model.number}`}>{model.number}</Link>
                    <span className={styles.name}>{model.name}</span>
                  </th>
                  <td className={styles.told}>
                    <ShownWords>{keyFacts(model)}</ShownWords>
                  </td>
                  <td className="number">
                    <ShownWords>{massText(model.mass_kg, system)}</ShownWords>
                  </td>
                  <td className="number">
                    <ShownMoney minor={model.day_minor} currency={currency} />
                  </td>
                  <td className="number">
                    <ShownMoney minor={model.week_minor} currency={currency} />
                  </td>
                  <td className="number">
                    <ShownMoney minor={model.four_weeks_minor} currency={currency} />
                  </td>
                  <td className="number">{freeText(model)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </PlanWide>
      </section>
    );
  });
}

function freeText(model: ModelView): string {
  if (model.retired_on !== null) return `retired ${model.retired_on}`;
  return model.madeToOrder ? 'made to order' : String(model.free);
}

/** The few facts that tell models of a role apart. */
const TELLING: Readonly<Record<string, readonly string[]>> = {
  drive: ['duty class', 'power'],
  head: ['kind', 'ratio', 'torque rating', 'bore'],
  adapter: ['kind', 'wheel', 'sockets', 'length', 'torque rating'],
  extension: ['kind', 'length', 'torque rating'],
  restraint: ['kind', 'torque rating', 'arm', 'needs'],
  option: ['kind', 'lowest', 'highest', 'highest turns', 'sits'],
  accessory: ['kind', 'fits'],
};
const LONGEST = 90;

function keyFacts(model: Listed): string {
  const told = (TELLING[model.role] ?? []).flatMap((label) => model.told.filter((fact) => fact.label === label));
  if (model.role === 'drive') return `${told[0]?.text ?? ''}, ${model.source ?? ''}, ${gearsOf(model)}`;
  return told
    .map(({ label, text }) => (label === 'kind' ? text : `${label} ${text}`))
    .map((text) => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text))
    .join(', ');
}

function gearsOf(model: Listed): string {
  const gears = model.facts.gears;
  const count = Array.isArray(gears) ? gears.length : 0;
  const stall = /stall torque ([^,;]+)/.exec(model.told.find(({ label }) => label === 'gears')?.text ?? '')?.[1] ?? '';
  return `${count} ${count === 1 ? 'gear' : 'gears'}, stalls at up to ${stall}`;
}
