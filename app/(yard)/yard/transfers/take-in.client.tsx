'use client';

import { useId, useState } from 'react';
import type { TransferArrived } from '#lib/services/stock/arrive-transfer.ts';
import type { TransferView } from '#lib/services/stock/list-transfers.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { SaidLine } from '../../_blocks/said.tsx';
import { ScanField } from '../../_blocks/scan-field.client.tsx';
import { useAct } from '../../_blocks/use-act.client.ts';

interface TakeInProps {
  readonly transfer: TransferView;
  readonly bays: readonly string[];
}

/** Scan a bay, then what goes into it; counted pieces by number; what never came is written off. */
export function TakeIn({ transfer, bays }: TakeInProps) {
  const { act, said, setSaid, busy } = useAct(`/api/v1/transfers/${transfer.number}`);
  const [bay, setBay] = useState('');
  const coming = transfer.units.filter(({ active }) => active);
  const pieces = transfer.items.filter(({ arrived }) => arrived === null);
  const arrive = (body: object, words: string) =>
    void act<TransferArrived>({
      body: { units: [], items: [], lost: [], ...body },
      done: ({ left }) => ({
        tone: 'good',
        words:
          left.length === 0
            ? `${words} All of ${transfer.number} is settled.`
            : `${words} ${left.length} still to come.`,
      }),
    });
  const take = (text: string) => {
    const scan = readScan(text);
    if (scan.kind === 'bay' && scan.depot === transfer.to_depot && bays.includes(scan.bay)) {
      setBay(scan.bay);
      setSaid({ tone: 'good', words: `You are at ${scan.depot} ${scan.bay}: scan what goes in.` });
    } else if (scan.kind !== 'unit') {
      setSaid({ tone: 'refusal', words: `Scan a bay of ${transfer.to_depot} or a unit of this transfer.` });
    } else if (bay === '') setSaid({ tone: 'refusal', words: 'Scan or choose the bay first.' });
    else arrive({ units: [{ serial: scan.serial, bay }] }, `${scan.serial} stands in ${transfer.to_depot} ${bay}.`);
  };
  return (
    <details>
      <summary>Take in at {transfer.to_depot}</summary>
      {coming.length > 0 && (
        <>
          <BayChoice bay={bay} bays={bays} onChange={setBay} />
          <ScanField label={bay === '' ? 'Scan the bay' : `Scan what goes into ${bay}`} onScan={take} disabled={busy} />
        </>
      )}
      <SaidLine said={said} />
      {pieces.map(({ model, name, count }) => (
        <PiecesIn
          key={model}
          words={`${model} ${name}: ${count} were sent`}
          most={count}
          onIn={(arrived) => arrive({ items: [{ model, arrived }] }, `${arrived} of ${model} are in.`)}
        />
      ))}
      {coming.map(({ serial }) => (
        <NeverCame
          key={serial}
          serial={serial}
          onLost={(reason) => arrive({ lost: [{ serial, reason }] }, `${serial} is written off.`)}
        />
      ))}
    </details>
  );
}

interface BayChoiceProps {
  readonly bay: string;
  readonly bays: readonly string[];
  readonly onChange: (bay: string) => void;
}

function BayChoice({ bay, bays, onChange }: BayChoiceProps) {
  const id = useId();
  return (
    <p>
      <label htmlFor={id}>Into bay</label>
      <select id={id} value={bay} onChange={(event) => onChange(event.target.value)}>
        <option value="">scan or choose</option>
        {bays.map((code) => (
          <option key={code}>{code}</option>
        ))}
      </select>
    </p>
  );
}

interface PiecesInProps {
  readonly words: string;
  readonly most: number;
  readonly onIn: (arrived: number) => void;
}

function PiecesIn({ words, most, onIn }: PiecesInProps) {
  const id = useId();
  const [count, setCount] = useState(String(most));
  return (
    <div className="tools">
      <div>
        <label htmlFor={id}>{words}</label>
        <input
          id={id}
          type="number"
          inputMode="numeric"
          min={0}
          max={most}
          value={count}
          onChange={(event) => setCount(event.target.value)}
        />
      </div>
      <button type="button" disabled={count === ''} onClick={() => onIn(Number(count))}>
        Arrived
      </button>
    </div>
  );
}

function NeverCame({ serial, onLost }: { readonly serial: string; readonly onLost: (reason: string) => void }) {
  const id = useId();
  const [reason, setReason] = useState('');
  return (
    <details>
      <summary>{serial} never came</summary>
      <div className="tools">
        <div>
          <label htmlFor={id}>Why it is given up</label>
          <input id={id} value={reason} onChange={(event) => setReason(event.target.value)} />
        </div>
        <button type="button" className="danger" disabled={reason.trim() === ''} onClick={() => onLost(reason)}>
          Write off as lost
        </button>
      </div>
    </details>
  );
}
