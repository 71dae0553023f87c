import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { PlanPicture } from '#app/_ui/plan/plan-picture.tsx';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { ShownMoney, ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { massText } from '#lib/documents/words/print-values.ts';
import { type ModelDetail, openModel } from '#lib/services/equipment/open-model.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { ChangeHistory } from '../change-history.tsx';
import styles from '../equipment.module.css';
import { factTexts } from '../fact-texts.ts';
import { GearTable } from '../gear-table.tsx';
import { ModelActs } from '../model-acts.client.tsx';
import { ModelRates } from '../model-rates.client.tsx';

export const dynamic = 'force-dynamic';

interface ModelPageProps {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: ModelPageProps): Promise<Metadata> {
  return { title: (await params).number };
}

export default async function ModelPage({ params }: ModelPageProps) {
  const context = await asking();
  const [{ number }, system] = await Promise.all([params, unitSystem()]);
  const opened = openModel(context, { number, system });
  if (!opened.ok) return <PlanRefused sentence={opened.reason.sentence} />;
  const model = opened.value;
  return (
    <div className={styles.stack}>
      <div>
        <p className="soft">
          <Link href="/equipment">Equipment</Link> / {model.role}
        </p>
        <h1>
          {model.number} {model.name}
        </h1>
        {model.retired_on === null ? null : (
          <p className="notice warning">
            Retired on {model.retired_on}: it is no longer chosen. Quotes that were issued keep it.
          </p>
        )}
        {model.mayChange ? (
          <ModelActs
            number={model.number}
            role={model.role}
            version={model.version}
            retired={model.retired_on !== null}
            changes={model.changes.length}
          />
        ) : null}
      </div>
      {model.warnings.length === 0 ? null : (
        <section className="notice warning" aria-label="What does not hang together">
          <ul>
            {model.warnings.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      <div className={styles.pair}>
        <section className="panel" aria-labelledby="picture">
          <h2 id="picture">What it looks like</h2>
          <PlanPicture drawing={model.picture} id="model-picture" />
        </section>
        <Facts model={model} system={system} />
      </div>
      <Chart model={model} />
      <section className="panel" aria-labelledby="rates">
        <h2 id="rates">Rates</h2>
        <ModelRates number={model.number} currency={model.currency} cards={model.cards} mayChange={model.mayChange} />
        <p>
          Replacement value: <ShownMoney minor={model.replacement_minor} currency={model.currency} /> {model.currency}.
        </p>
      </section>
      <div className={styles.pair}>
        <Stock model={model} />
        <Mates model={model} />
      </div>
      <section className="panel" aria-labelledby="changes">
        <h2 id="changes">What changed</h2>
        <ChangeHistory changes={[...model.changes, ...model.rateChanges].sort((a, b) => b.id - a.id)} />
      </section>
    </div>
  );
}

function Chart({ model }: { readonly model: ModelDetail }) {
  if (model.chart === null) return null;
  return (
    <section className="panel" aria-labelledby="chart">
      <h2 id="chart">Torque and speed</h2>
      <div className={styles.pair}>
        <PlanPicture drawing={model.chart.drawing} id="model-chart" />
        <GearTable rows={model.chart.rows} />
      </div>
    </section>
  );
}

function Facts({ model, system }: { readonly model: ModelDetail; readonly system: UnitSystem }) {
  return (
    <section className="panel" aria-labelledby="facts">
      <h2 id="facts">Facts</h2>
      <dl className={styles.facts}>
        <dt>mass</dt>
        <dd>
          <ShownWords>{massText(model.mass_kg, system)}</ShownWords>
        </dd>
        <dt>hazardous-area marking</dt>
        <dd>{model.marking ?? 'none: it goes into no zone'}</dd>
        {factTexts(model.facts, system).map((fact) => (
          <Fact key={fact.label} label={fact.label} text={fact.text} />
        ))}
      </dl>
    </section>
  );
}

function Fact({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>
        <ShownWords>{text}</ShownWords>
      </dd>
    </>
  );
}

function Shelves({ shelves }: Pick<ModelDetail, 'shelves'>) {
  const total = shelves.reduce((sum, { count }) => sum + count, 0);
  const each = shelves.map(({ depot, count }) => `${count} at ${depot}`).join(', ');
  return (
    <p>
      {total} pieces without serial numbers{each === '' ? '' : `: ${each}`}.{' '}
      <Link href="/yard/stock?kind=counted">Counted pieces in the yard</Link>
    </p>
  );
}

function Stock({ model }: { readonly model: ModelDetail }) {
  const total = model.stock.reduce((sum, { units }) => sum + units, 0);
  return (
    <section className="panel" aria-labelledby="stock">
      <h2 id="stock">Stock and use</h2>
      {model.madeToOrder ? <p>Made to order by the workshop: never in stock.</p> : null}
      {model.counted ? <Shelves shelves={model.shelves} /> : null}
      {model.stock.length === 0 ? null : (
        <table>
          <caption>{total} units with serial numbers</caption>
          <thead>
            <tr>
              <th scope="col">Depot</th>
              <th scope="col">State</th>
              <th scope="col" className="number">
                Units
              </th>
            </tr>
          </thead>
          <tbody>
            {model.stock.map((row) => (
              <tr key={`${row.depot} ${row.state}`}>
                <th scope="row">{row.depot}</th>
                <td>{row.state}</td>
                <td className="number">{row.units}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {!model.counted && !model.madeToOrder && total === 0 ? (
        <p>No unit has been entered yet, so that none is free.</p>
      ) : null}
      <h3>In plans of open enquiries</h3>
      {model.usedIn.length === 0 ? <p className="soft">In none.</p> : null}
      <ul>
        {model.usedIn.map((use) => (
          <li key={use.id}>
            <Link href={`/enquiries/${use.id}/kits`}>{use.number}</Link> {use.title}: {use.pieces}{' '}
            {use.pieces === 1 ? 'piece' : 'pieces'}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Mates({ model }: { readonly model: ModelDetail }) {
  return (
    <section className="panel" aria-labelledby="mates">
      <h2 id="mates">What it joins</h2>
      {model.mates.length === 0 ? <p className="soft">It has no coupling.</p> : null}
      {model.mates.map((mate) => (
        <div key={mate.side}>
          <h3>{mate.side === 'input' ? 'Goes on' : 'Carries'}</h3>
          {mate.models.length === 0 ? <p>Nothing in the catalogue.</p> : null}
          <ul className={styles.list}>
            {mate.models.map((other) => (
              <li key={other.number}>
                <Link href={`/equipment/${other.number}`}>{other.number}</Link> <small>{other.name}</small>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
