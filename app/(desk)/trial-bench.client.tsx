'use client';
import Link from 'next/link';
import { useCallback, useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownSentence } from '#app/_ui/shown-units.client.tsx';
import type { ChangeToTry, TrialState } from '#lib/services/house/try-change.ts';

const ASK_AGAIN_MS = 700;
const TAGS_SHOWN = 12;

/** Which lines of which open enquiries would a change touch: worked out by the house while one waits, or goes on reading. */
export function TrialBench({ change }: { readonly change: ChangeToTry }) {
  const [state, setState] = useState<TrialState | null>(null);
  const [trouble, setTrouble] = useState('');
  const [key] = useState(() => JSON.stringify(change));
  const take = useCallback((sent: Awaited<ReturnType<typeof send<TrialState>>>) => {
    if (sent.ok) setState(sent.value);
    else setTrouble(sent.sentence);
  }, []);
  useEffect(() => {
    let isThere = true;
    const body: unknown = JSON.parse(key);
    send<TrialState>({ method: 'POST', path: '/api/v1/trial', body }).then((sent) =>
      isThere ? take(sent) : undefined,
    );
    return () => {
      isThere = false;
    };
  }, [key, take]);
  const isRunning = state?.kind === 'running';
  useEffect(() => {
    if (!isRunning) return;
    const timer = setInterval(
      () => send<TrialState>({ method: 'GET', path: '/api/v1/trial' }).then(take),
      ASK_AGAIN_MS,
    );
    return () => clearInterval(timer);
  }, [isRunning, take]);
  const halt = async () => take(await send<TrialState>({ method: 'DELETE', path: '/api/v1/trial' }));
  if (trouble !== '') return <p className="notice refusal">{trouble}</p>;
  if (state === null) return <p role="status">The trial is being started.</p>;
  const touched = state.enquiries.filter(({ classes }) => classes.length > 0);
  const lines = touched.reduce((sum, one) => sum + one.lines - one.same, 0);
  return (
    <section className="panel" aria-label="What would change">
      <div className="tools" role="status">
        {isRunning ? (
          <>
            <progress max={Math.max(1, state.asked)} value={state.enquiries.length} aria-label="Enquiries looked at" />
            <span>
              {state.enquiries.length} of {state.asked} open enquiries looked at.
            </span>
            <button type="button" onClick={halt}>
              Stop
            </button>
          </>
        ) : (
          <strong>{conclusion({ state, lines, touched: touched.length })}</strong>
        )}
      </div>
      {touched.map((one) => (
        <div key={one.enquiryId}>
          <h3>
            <Link href={`/enquiries/${one.enquiryId}`}>{one.number}</Link> {one.title}
          </h3>
          <ul>
            {one.classes.map((found) => (
              <ClassView key={`${found.kind} ${found.tags[0]}`} found={found} />
            ))}
            <li className="soft">
              {one.same} of its {one.lines} lines stay as they are.
            </li>
          </ul>
        </div>
      ))}
    </section>
  );
}

type Found = TrialState['enquiries'][number]['classes'][number];

function ClassView({ found }: { readonly found: Found }) {
  const { tags, before, after, kind, why } = found;
  const gone = before.filter((number) => !after.includes(number));
  const come = after.filter((number) => !before.includes(number));
  const mark = kind === 'no longer served' ? 'mark refusal' : kind === 'another kit' ? 'mark warning' : 'mark';
  return (
    <li>
      <span className={mark}>{kind}</span> {tags.slice(0, TAGS_SHOWN).join(', ')}
      {tags.length > TAGS_SHOWN ? ` and ${tags.length - TAGS_SHOWN} more` : ''}
      {kind === 'another kit' ? `: ${come.join(', ') || 'nothing'} instead of ${gone.join(', ') || 'nothing'}` : ''}
      <ul>
        {why.map((told) => (
          <li key={told.sentence}>
            <ShownSentence told={told} />
          </li>
        ))}
      </ul>
    </li>
  );
}

interface Conclusion {
  readonly state: TrialState;
  readonly lines: number;
  readonly touched: number;
}

function conclusion({ state, lines, touched }: Conclusion): string {
  if (state.kind === 'failed' || state.kind === 'none') return state.sentence;
  if (lines === 0) return `No line of the ${state.asked} open enquiries would change.`;
  return `${lines} ${lines === 1 ? 'line' : 'lines'} of ${touched} open ${touched === 1 ? 'enquiry' : 'enquiries'} would change. Nothing has been saved.`;
}
