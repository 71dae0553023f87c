'use client';

import { useState } from 'react';
import type { OutCounted, OutUnit, OutView } from '#lib/services/yard/out/open-out.ts';
import { modelCode } from '#lib/stock/scan-code.ts';
import styles from '../../../_blocks/moves.module.css';
import { QueuePanel } from '../../../_blocks/queue-panel.client.tsx';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { SoundSwitch } from '../../../_blocks/sound-switch.client.tsx';
import { type ScanQueue, useScanQueue } from '../../../_blocks/use-scan-queue.client.tsx';

interface LoadProps {
  readonly view: OutView;
  readonly loading: NonNullable<OutView['loading']>;
}

/** Puts pieces and cases on the delivery by scan, shows what still waits, and counts counted pieces. */
export function OutLoad({ view, loading }: LoadProps) {
  const queue = useScanQueue(view.number);
  const delivery = loading.id;
  const waits = new Set(queue.scans.flatMap(({ scan, state }) => (state === 'waiting' ? [scan.code] : [])));
  return (
    <>
      <section className="panel" aria-label="Load">
        <div className="heading">
          <h2>
            Delivery {loading.sequence}, by {view.transport}: {loading.units.length} on it, {view.waiting.length} to go
          </h2>
          <SoundSwitch isMuted={queue.isMuted} onToggle={queue.toggleSound} />
        </div>
        <ScanField label="Scan a piece or a case" onScan={(code) => queue.add({ kind: 'load', code, delivery })} />
        <SaidLine said={queue.said} />
        <div className="columns">
          <Units
            title="Still to load"
            units={view.waiting}
            waits={waits}
            empty="Everything picked is on it."
            act={({ serial }) => ({
              label: `Load ${serial}`,
              words: 'Load',
              run: () => queue.add({ kind: 'load', code: serial, delivery }),
            })}
          />
          <Units
            title="On it"
            units={loading.units}
            waits={waits}
            empty="Nothing yet: scan the first piece."
            act={({ serial }) => ({
              label: `Take ${serial} off`,
              words: 'Off',
              run: () => queue.add({ kind: 'take off', code: serial, delivery }),
            })}
          />
        </div>
        <Counted counted={view.counted} delivery={delivery} queue={queue} waits={waits} />
      </section>
      <QueuePanel queue={queue} />
    </>
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
  /** Codes of scans that the house has not answered yet. */
  readonly waits: ReadonlySet<string>;
  readonly empty: string;
  readonly act: (unit: OutUnit) => Act;
}

function Units({ title, units, waits, empty, act }: UnitsProps) {
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
              {waits.has(unit.serial) ? (
                <span className="mark warning">waiting</span>
              ) : (
                <button type="button" aria-label={label} onClick={run}>
                  {words}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

interface CountedProps {
  readonly counted: readonly OutCounted[];
  readonly delivery: number;
  readonly queue: ScanQueue;
  readonly waits: ReadonlySet<string>;
}

function Counted({ counted, delivery, queue, waits }: CountedProps) {
  if (counted.length === 0) return null;
  return (
    <div>
      <h3>Counted pieces</h3>
      <ul className={styles.list}>
        {counted.map((one) => (
          <CountedRow
            key={`${one.model} ${one.onThis}`}
            one={one}
            isWaiting={waits.has(modelCode(one.model))}
            onCount={(count) => queue.add({ kind: 'count on', code: modelCode(one.model), delivery, count })}
          />
        ))}
      </ul>
    </div>
  );
}

interface CountedRowProps {
  readonly one: OutCounted;
  readonly isWaiting: boolean;
  readonly onCount: (count: number) => void;
}

function CountedRow({ one: { model, name, booked, sent, onThis }, isWaiting, onCount }: CountedRowProps) {
  const most = booked - sent;
  const [typed, setTyped] = useState(String(onThis));
  return (
    <li>
      <div className={styles.what}>
        <strong className="tag">{model}</strong> {name}
        <small className="beside">
          {booked} booked, {sent} left before, {onThis} on this
        </small>
      </div>
      {isWaiting ? <span className="mark warning">waiting</span> : null}
      <form
        className={styles.row}
        onSubmit={(event) => {
          event.preventDefault();
          if (/^\d{1,6}$/.test(typed.trim())) onCount(Number(typed));
        }}
      >
        <label>
          On it
          <input
            className={styles.number}
            inputMode="numeric"
            autoComplete="off"
            value={typed}
            aria-label={`${model} on it`}
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
        <button type="submit" aria-label={`Keep the count of ${model}`} disabled={typed.trim() === String(onThis)}>
          Keep
        </button>
        <button
          type="button"
          aria-label={`All of ${model} on it`}
          disabled={onThis === most}
          onClick={() => {
            setTyped(String(most));
            onCount(most);
          }}
        >
          All
        </button>
      </form>
    </li>
  );
}
