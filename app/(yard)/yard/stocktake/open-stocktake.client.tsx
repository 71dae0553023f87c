'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { readScan } from '#lib/stock/scan-code.ts';
import { SaidLine } from '../../_blocks/said.tsx';
import { ScanField } from '../../_blocks/scan-field.client.tsx';
import { useAct } from '../../_blocks/use-act.client.ts';

interface OpenStocktakeProps {
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly bays: readonly { readonly depot: string; readonly code: string }[];
}

/** Scanning a bay opens a stocktake of that bay; a press opens one of the whole depot. */
export function OpenStocktake({ depots, bays }: OpenStocktakeProps) {
  const router = useRouter();
  const { act, said, setSaid, busy } = useAct('/api/v1/stocktakes');
  const [depot, setDepot] = useState(depots[0]?.code ?? '');
  const [bay, setBay] = useState('');
  const open = async (scope: { readonly depot: string; readonly bay: string }) => {
    const opened = await act<{ number: string }>({ body: scope, done: () => null });
    if (opened !== null) router.push(`/yard/stocktake/${opened.number}`);
  };
  return (
    <section className="card" aria-label="Begin">
      <h2>Begin</h2>
      <ScanField
        label="Scan a bay to count it"
        disabled={busy}
        onScan={(text) => {
          const scan = readScan(text);
          if (scan.kind === 'bay') void open({ depot: scan.depot, bay: scan.bay });
          else setSaid({ tone: 'refusal', words: 'That is no bay: scan the label on the bay, or choose it below.' });
        }}
      />
      <div className="tools">
        <div>
          <label htmlFor="depot">Depot</label>
          <select
            id="depot"
            value={depot}
            onChange={(event) => {
              setDepot(event.target.value);
              setBay('');
            }}
          >
            {depots.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="bay">Bay</label>
          <select id="bay" value={bay} onChange={(event) => setBay(event.target.value)}>
            <option value="">the whole depot</option>
            {bays
              .filter((one) => one.depot === depot)
              .map(({ code }) => (
                <option key={code}>{code}</option>
              ))}
          </select>
        </div>
        <button type="button" className="main" disabled={busy} onClick={() => void open({ depot, bay })}>
          Begin
        </button>
      </div>
      <SaidLine said={said} />
    </section>
  );
}
