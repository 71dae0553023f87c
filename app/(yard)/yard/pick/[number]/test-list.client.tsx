'use client';

import { useId, useState } from 'react';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { TestView } from '#lib/services/yard/picking/open-picking.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useYardDeed, type YardSound } from '../../../_blocks/use-yard-deed.client.ts';

interface TestListProps {
  readonly number: string;
  readonly tests: readonly TestView[];
  readonly sound: YardSound;
}

/** Every machine and limiter that goes is run at torque, and the reading is kept. */
export function TestList({ number, tests, sound }: TestListProps) {
  const [instrument, setInstrument] = useState('');
  const id = useId();
  if (tests.length === 0) return null;
  return (
    <section className="card" aria-label="Function test at torque">
      <h2>Function test at torque</h2>
      <div className="labelled">
        <label htmlFor={id}>Instrument</label>
        <input
          id={id}
          value={instrument}
          onChange={(event) => setInstrument(event.target.value)}
          placeholder="name and number"
        />
      </div>
      <ul className="yard-checks">
        {tests.map((test) => (
          <TestRow key={test.serial} number={number} test={test} instrument={instrument} sound={sound} />
        ))}
      </ul>
    </section>
  );
}

interface TestRowProps extends Omit<TestListProps, 'tests'> {
  readonly test: TestView;
  readonly instrument: string;
}

interface Verdict {
  readonly passed: boolean;
  readonly sentence: string;
}

function TestRow({ number, test, instrument, sound }: TestRowProps) {
  const { deed, said, busy } = useYardDeed(sound);
  const [set, setSet] = useState('');
  const [measured, setMeasured] = useState('');
  const { serial, name, limiter, done } = test;
  const submit = () =>
    deed<Verdict>({
      path: `/api/v1/yard/bookings/${number}/tests`,
      body: {
        serial,
        set_nm: limiter === null ? null : numberOf(set),
        measured_nm: numberOf(measured) ?? 0,
        instrument,
      },
      done: ({ passed, sentence }) => ({ tone: passed ? 'good' : 'refusal', words: sentence }),
    });
  return (
    <li>
      <div className="what">
        <strong className="tag">{serial}</strong> {name}
        <small className="beside">{limiter === null ? 'No limiter of its own.' : tellLimiter(limiter)}</small>
      </div>
      {done !== null && (
        <span className={done.passed ? 'mark good' : 'mark refusal'}>{done.passed ? '✓ passed' : '✕ failed'}</span>
      )}
      {done !== null && (
        <small className="beside">
          {done.set_nm === null ? '' : `set ${done.set_nm}, `}
          read {done.measured_nm} N·m with {done.instrument}; {done.who}, <ShownMoment at={done.at} />
        </small>
      )}
      {done?.passed !== true && (
        <form
          className="torque-test"
          onSubmit={(event) => {
            event.preventDefault();
            void submit();
          }}
        >
          {limiter !== null && <Torque label="Set, N·m" serial={serial} value={set} onChange={setSet} />}
          <Torque label="Read, N·m" serial={serial} value={measured} onChange={setMeasured} />
          <button type="submit" disabled={busy} aria-label={`Record ${serial}`}>
            Record
          </button>
        </form>
      )}
      {said !== null && <SaidLine said={said} />}
    </li>
  );
}

interface TorqueProps {
  readonly label: string;
  readonly serial: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
}

function Torque({ label, serial, value, onChange }: TorqueProps) {
  const id = useId();
  return (
    <div className="labelled">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        aria-label={`${label} of ${serial}`}
        inputMode="decimal"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}

function numberOf(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(value) ? null : value;
}

function tellLimiter({ lowest, highest, error }: NonNullable<TestView['limiter']>): string {
  return `Limiter ${lowest} to ${highest} N·m, within ${Math.round(error * 1000) / 10} %.`;
}
