'use client';

import { useState } from 'react';
import type { StocktakeView } from '#lib/services/stock/open-stocktake.ts';
import type { ScanAnswer } from '#lib/services/stock/scan-stocktake.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';
import { CloseStocktake } from './close-stocktake.client.tsx';
import { CountedList } from './counted-list.client.tsx';
import { FoundList } from './found-list.client.tsx';

/** Scan what is there; every scan is kept at once, so that the work can stop and go on at any time. */
export function StocktakeWork({ view }: { readonly view: StocktakeView }) {
  const { stocktake, findings, mayChange } = view;
  const path = `/api/v1/stocktakes/${stocktake.number}`;
  const { act, said, busy } = useAct(path);
  const [bay, setBay] = useState(stocktake.bay);
  const isOpen = stocktake.state === 'open' && mayChange;
  const scan = async (code: string) => {
    const answer = await act<ScanAnswer>({
      body: { act: 'scan', code, bay },
      done: (value) => ({ tone: value.kind === 'unit' ? value.tone : 'good', words: value.sentence }),
    });
    if (answer?.kind === 'bay') setBay(answer.bay);
    if (answer?.kind === 'count') document.getElementById(`count-${answer.model}`)?.focus();
  };
  const found = findings.inPlace.length + findings.misplaced.length + findings.unexpected.length;
  return (
    <div className="yard-cards">
      {isOpen && (
        <section className="card" aria-label="Scan">
          <p>
            <strong>{bay === '' ? 'Scan a bay first.' : `You are at ${stocktake.depot} ${bay}.`}</strong> {found} found,{' '}
            {findings.missing.length} still to find.
          </p>
          <ScanField
            label="Scan a bay, a unit or a box"
            help="Typing works too: a serial number, or the model number of counted pieces."
            onScan={(text) => void scan(text)}
          />
          <SaidLine said={said} />
        </section>
      )}
      <FoundList view={view} isOpen={isOpen} path={path} />
      <CountedList view={view} isOpen={isOpen} path={path} />
      {isOpen ? <CloseStocktake view={view} path={path} busy={busy} /> : <Outcome text={stocktake.outcome_json} />}
    </div>
  );
}

function Outcome({ text }: { readonly text: string | null }) {
  if (text === null) return null;
  const outcome: Readonly<Record<string, unknown>> = JSON.parse(text);
  const told = (value: unknown): string => {
    if (!Array.isArray(value)) return String(value);
    if (value.length === 0) return 'none';
    return value
      .map((one) => (typeof one === 'string' ? one : `${one.model}: ${one.before} → ${one.after}`))
      .join(', ');
  };
  return (
    <section className="card" aria-label="What came of it">
      <h2>What came of it</h2>
      <dl>
        {WORDS.map(([key, label]) => (
          <div key={key} style={{ display: 'contents' }}>
            <dt>{label}</dt>
            <dd>{told(outcome[key] ?? [])}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const WORDS = [
  ['inPlace', 'In their place'],
  ['moved', 'Moved on record'],
  ['foundAgain', 'Found again, in quarantine'],
  ['unclear', 'To be cleared up'],
  ['lost', 'Given up as lost'],
  ['left', 'Missing, left on record'],
  ['counted', 'Counted anew'],
] as const;
