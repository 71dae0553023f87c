'use client';

import { useState } from 'react';
import type { TransfersView } from '#lib/services/stock/list-transfers.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { SaidLine } from '../../_blocks/said.tsx';
import { ScanField } from '../../_blocks/scan-field.client.tsx';
import { useAct } from '../../_blocks/use-act.client.ts';

interface SendTransferProps {
  readonly view: Pick<TransfersView, 'depots' | 'counted' | 'usualDueOn'>;
  readonly today: string;
}

/** Scan what is loaded, say when it can be used over there, send it. */
export function SendTransfer({ view: { depots, counted, usualDueOn }, today }: SendTransferProps) {
  const { act, said, setSaid, busy } = useAct('/api/v1/transfers');
  const [from, setFrom] = useState(depots[0]?.code ?? '');
  const [to, setTo] = useState(depots[1]?.code ?? '');
  const [dueOn, setDueOn] = useState(usualDueOn);
  const [serials, setSerials] = useState<readonly string[]>([]);
  const [items, setItems] = useState<Readonly<Record<string, string>>>({});
  const chosen = Object.entries(items).filter(([, count]) => Number(count) > 0);
  const take = (text: string) => {
    const scan = readScan(text);
    const isCounted = scan.kind === 'unit' && counted.some(({ model }) => model === scan.serial);
    if (scan.kind === 'model' || isCounted) {
      const model = scan.kind === 'model' ? scan.model : scan.serial;
      setItems({ ...items, [model]: items[model] ?? '1' });
      setSaid({ tone: 'good', words: `Type how many of ${model} go along.` });
    } else if (scan.kind !== 'unit') setSaid({ tone: 'refusal', words: 'Scan units or boxes of counted pieces here.' });
    else if (serials.includes(scan.serial))
      setSaid({ tone: 'warning', words: `${scan.serial} is on the list already.` });
    else {
      setSerials([scan.serial, ...serials]);
      setSaid({ tone: 'good', words: `${scan.serial} goes along.` });
    }
  };
  const sendAll = async () => {
    const body = { from, to, dueOn, serials, items: chosen.map(([model, count]) => ({ model, count: Number(count) })) };
    const sent = await act<{ number: string }>({
      body,
      done: ({ number }) => ({ tone: 'good', words: `${number} is on its way to ${to}.` }),
    });
    if (sent === null) return;
    setSerials([]);
    setItems({});
  };
  return (
    <section className="card" aria-label="Send">
      <h2>Send</h2>
      <div className="tools">
        <DepotChoice id="from" label="From" value={from} onChange={setFrom} depots={depots} />
        <DepotChoice id="to" label="To" value={to} onChange={setTo} depots={depots} />
        <div>
          <label htmlFor="due">Can be used there from</label>
          <input id="due" type="date" min={today} value={dueOn} onChange={(event) => setDueOn(event.target.value)} />
        </div>
      </div>
      <ScanField label="Scan what goes along" onScan={take} />
      <SaidLine said={said} />
      <Load
        serials={serials}
        items={items}
        counted={counted}
        from={from}
        onLeave={(serial) => setSerials(serials.filter((one) => one !== serial))}
        onCount={(model, count) => setItems({ ...items, [model]: count })}
      />
      <button
        type="button"
        className="main"
        disabled={busy || (serials.length === 0 && chosen.length === 0)}
        aria-busy={busy}
        onClick={() => void sendAll()}
      >
        Send {serials.length + chosen.length === 0 ? '' : serials.length + chosen.length} to {to}
      </button>
    </section>
  );
}

interface LoadProps {
  readonly serials: readonly string[];
  readonly items: Readonly<Record<string, string>>;
  readonly counted: TransfersView['counted'];
  readonly from: string;
  readonly onLeave: (serial: string) => void;
  readonly onCount: (model: string, count: string) => void;
}

/** What was scanned so far. */
function Load({ serials, items, counted, from, onLeave, onCount }: LoadProps) {
  return (
    <ul className="yard-rows">
      {serials.map((serial) => (
        <li key={serial}>
          <strong>{serial}</strong>
          <button type="button" onClick={() => onLeave(serial)}>
            Leave here
          </button>
        </li>
      ))}
      {Object.entries(items).map(([model, count]) => (
        <li key={model}>
          <span>
            <strong>{model}</strong> {counted.find((one) => one.model === model)?.name}
            <small className="beside">{counted.find((one) => one.model === model)?.at[from] ?? 0} there</small>
          </span>
          <input
            type="number"
            inputMode="numeric"
            min={0}
            aria-label={`Pieces of ${model}`}
            style={{ width: '6em' }}
            value={count}
            onChange={(event) => onCount(model, event.target.value)}
          />
        </li>
      ))}
    </ul>
  );
}

interface DepotChoiceProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (code: string) => void;
  readonly depots: TransfersView['depots'];
}

function DepotChoice({ id, label, value, onChange, depots }: DepotChoiceProps) {
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {depots.map(({ code, name }) => (
          <option key={code} value={code}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}
