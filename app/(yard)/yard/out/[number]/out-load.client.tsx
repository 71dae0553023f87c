'use client';

import type { OutCounted, OutUnit, OutView } from '#lib/services/yard/out/open-out.ts';
import styles from '../../../_blocks/moves.module.css';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { type Doing, useDeed } from '../../../_blocks/use-deed.client.tsx';

interface LoadProps {
  readonly view: OutView;
  readonly loading: NonNullable<OutView['loading']>;
}

/** Puts pieces and cases on the delivery by scan, shows what still waits, and counts counted pieces. */
export function OutLoad({ view, loading }: LoadProps) {
  const doing = useDeed();
  const path = `/api/v1/yard/deliveries/${loading.id}`;
  const scan = (text: string) =>
    doing.run<{ readonly said: string }>({ path: `${path}/scans`, body: { scan: text }, words: ({ said }) => said });
  return (
    <section className="panel" aria-label="Load">
      <h2>
        Delivery {loading.sequence}, by {view.transport}: {loading.units.length} on it, {view.waiting.length} to go
      </h2>
      <ScanField label="Scan a piece or a case" onScan={scan} />
      <SaidLine said={doing.said} />
      <div className="columns">
        <Units
          title="Still to load"
          units={view.waiting}
          empty="Everything picked is on it."
          act={(unit) => ({ label: `Load ${unit.serial}`, words: 'Load', run: () => scan(unit.serial) })}
        />
        <Units
          title="On it"
          units={loading.units}
          empty="Nothing yet: scan the first piece."
          act={(unit) => ({
            label: `Take ${unit.serial} off`,
            words: 'Off',
            run: () =>
              doing.run({
                path: `${path}/taken-off`,
                body: { serial: unit.serial },
                words: () => `${unit.serial} is off again.`,
              }),
          })}
        />
      </div>
      <Counted counted={view.counted} path={`${path}/counts`} doing={doing} />
    </section>
  );
}

interface Act {
  readonly label: string;
  readonly words: string;
  readonly run: () => void;
}

interface UnitsProps {
  readonly title: string;
  readonly units: readonly OutUnit[];
  readonly empty: string;
  readonly act: (unit: OutUnit) => Act;
}

function Units({ title, units, empty, act }: UnitsProps) {
  return (
    <div>
      <h3>
        {title} <span className="soft">{units.length}</span>
      </h3>
      {units.length === 0 ? <p className="soft">{empty}</p> : null}
      <ul className={styles.list}>
        {units.map((unit) => {
          const { label, words, run } = act(unit);
          return (
            <li key={unit.serial}>
              <div className={styles.what}>
                <strong className="tag">{unit.serial}</strong> {unit.name}
                {unit.caseLabel === '' ? null : <small className="beside">{unit.caseLabel}</small>}
              </div>
              <button type="button" aria-label={label} onClick={run}>
                {words}
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

interface CountedProps {
  readonly counted: readonly OutCounted[];
  readonly path: string;
  readonly doing: Doing;
}

function Counted({ counted, path, doing }: CountedProps) {
  if (counted.length === 0) return null;
  return (
    <div>
      <h3>Counted pieces</h3>
      <ul className={styles.list}>
        {counted.map(({ model, name, booked, sent, onThis }) => (
          <li key={model}>
            <div className={styles.what}>
              <strong className="tag">{model}</strong> {name}
              <small className="beside">
                {booked} booked, {sent} left before, {onThis} on this
              </small>
            </div>
            <label>
              On it
              <input
                className={styles.number}
                type="number"
                inputMode="numeric"
                min={0}
                max={booked - sent}
                defaultValue={onThis}
                aria-label={`${model} on it`}
                onBlur={(event) => {
                  const count = Number(event.currentTarget.value);
                  if (count !== onThis)
                    doing.run({ path, body: { model, count }, words: () => `${count} of ${model} are on it.` });
                }}
              />
            </label>
            <button
              type="button"
              aria-label={`All of ${model} on it`}
              disabled={onThis === booked - sent}
              onClick={() =>
                doing.run({
                  path,
                  body: { model, count: booked - sent },
                  words: () => `${booked - sent} of ${model} are on it.`,
                })
              }
            >
              All
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
