'use client';

import { type ReactNode, useState } from 'react';
import type { UnitStateChanged } from '#lib/services/stock/change-unit-state.ts';
import { SETTABLE_STATES } from '#lib/stock/unit-state.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';

interface UnitActsProps {
  readonly serial: string;
  readonly depot: string;
  readonly bay: string;
  readonly state: string;
  readonly runHours: number;
  readonly note: string;
  readonly today: string;
  readonly bays: readonly string[];
}

/** What can be done with a unit: moved, held back or made ready, inspected, noted. */
export function UnitActs(props: UnitActsProps) {
  const { act, said, busy } = useAct(`/api/v1/stock/${encodeURIComponent(props.serial)}`);
  const send: Send = (body, words) => {
    void act<unknown>({ body, done: () => ({ tone: 'good', words }) });
  };
  return (
    <section className="panel" aria-labelledby="acts">
      <h2 id="acts">Change</h2>
      <SaidLine said={said} />
      <div className="columns">
        <StateForm
          {...props}
          busy={busy}
          onSet={(to, reason) => {
            void act<UnitStateChanged>({
              body: { act: 'state', to, reason },
              done: ({ hits }) =>
                hits.length === 0
                  ? { tone: 'good', words: `${props.serial} is ${to} now.` }
                  : {
                      tone: 'warning',
                      words: `${props.serial} is ${to} now. It was to go out with ${hits.map(({ booking, startsOn }) => `${booking} from ${startsOn}`).join(', ')}: give those another unit.`,
                    },
            });
          }}
        />
        <MoveForm {...props} busy={busy} send={send} />
        <CheckForm {...props} busy={busy} send={send} />
        <NoteForm {...props} busy={busy} send={send} />
      </div>
    </section>
  );
}

type Send = (body: unknown, words: string) => void;

interface FormProps extends UnitActsProps {
  readonly busy: boolean;
  readonly send: Send;
}

function Fields({ onSubmit, children }: { readonly onSubmit: () => void; readonly children: ReactNode }) {
  return (
    <form
      className="tools"
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      {children}
    </form>
  );
}

interface StateFormProps extends UnitActsProps {
  readonly busy: boolean;
  readonly onSet: (to: string, reason: string) => void;
}

function StateForm({ state, busy, onSet }: StateFormProps) {
  const others = SETTABLE_STATES.filter((one) => one !== state);
  const [to, setTo] = useState<string>(others[0] ?? 'ready');
  const [reason, setReason] = useState('');
  return (
    <Fields onSubmit={() => onSet(to, reason)}>
      <div>
        <label htmlFor="state-to">State</label>
        <select id="state-to" value={to} onChange={(event) => setTo(event.target.value)}>
          {others.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="state-why">Why</label>
        <input id="state-why" value={reason} onChange={(event) => setReason(event.target.value)} required />
      </div>
      <button type="submit" disabled={busy} aria-busy={busy}>
        Set state
      </button>
    </Fields>
  );
}

function MoveForm({ serial, bay, bays, depot, busy, send }: FormProps) {
  const [to, setTo] = useState(bay);
  return (
    <Fields onSubmit={() => send({ act: 'move', to }, `${serial} stands in ${depot} ${to} now.`)}>
      <div>
        <label htmlFor="move-to">Bay in {depot}</label>
        <select id="move-to" value={to} onChange={(event) => setTo(event.target.value)}>
          {!bays.includes(bay) && <option value={bay}>{bay === '' ? 'none' : bay}</option>}
          {bays.map((code) => (
            <option key={code}>{code}</option>
          ))}
        </select>
      </div>
      <button type="submit" disabled={busy || to === bay} aria-busy={busy}>
        Move
      </button>
    </Fields>
  );
}

function CheckForm({ today, busy, send }: FormProps) {
  const [kind, setKind] = useState('inspection');
  const [doneOn, setDoneOn] = useState(today);
  const [dueOn, setDueOn] = useState('');
  const [certificate, setCertificate] = useState('');
  const record = () => {
    send({ act: 'check', kind, doneOn, certificate, ...(dueOn === '' ? {} : { dueOn }) }, `The ${kind} is recorded.`);
    setCertificate('');
  };
  return (
    <Fields onSubmit={record}>
      <div>
        <label htmlFor="check-kind">Record</label>
        <select id="check-kind" value={kind} onChange={(event) => setKind(event.target.value)}>
          <option>inspection</option>
          <option>calibration</option>
        </select>
      </div>
      <div>
        <label htmlFor="check-done">Done on</label>
        <input
          id="check-done"
          type="date"
          value={doneOn}
          max={today}
          onChange={(event) => setDoneOn(event.target.value)}
          required
        />
      </div>
      <div>
        <label htmlFor="check-due">Next due (empty: the usual)</label>
        <input id="check-due" type="date" value={dueOn} onChange={(event) => setDueOn(event.target.value)} />
      </div>
      <div>
        <label htmlFor="check-certificate">Certificate, by whom</label>
        <input
          id="check-certificate"
          value={certificate}
          onChange={(event) => setCertificate(event.target.value)}
          required
        />
      </div>
      <button type="submit" disabled={busy} aria-busy={busy}>
        Record
      </button>
    </Fields>
  );
}

function NoteForm({ runHours, note, busy, send }: FormProps) {
  const [hours, setHours] = useState(String(runHours));
  const [words, setWords] = useState(note);
  const [reason, setReason] = useState('');
  const lower = Number(hours) < runHours;
  return (
    <Fields onSubmit={() => send({ act: 'note', runHours: Number(hours), note: words, reason }, 'It is noted.')}>
      <div>
        <label htmlFor="note-hours">Run hours</label>
        <input
          id="note-hours"
          type="number"
          inputMode="decimal"
          min={0}
          step="any"
          style={{ width: '7em' }}
          value={hours}
          onChange={(event) => setHours(event.target.value)}
        />
      </div>
      <div>
        <label htmlFor="note-words">Note</label>
        <input id="note-words" value={words} onChange={(event) => setWords(event.target.value)} />
      </div>
      {lower && (
        <div>
          <label htmlFor="note-why">Why fewer hours</label>
          <input id="note-why" value={reason} onChange={(event) => setReason(event.target.value)} required />
        </div>
      )}
      <button type="submit" disabled={busy || hours === ''} aria-busy={busy}>
        Note
      </button>
    </Fields>
  );
}
