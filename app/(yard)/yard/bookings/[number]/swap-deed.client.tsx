'use client';

import { useState } from 'react';
import type { UnitSwapped } from '#lib/services/yard/swap-unit.ts';
import type { DeedProps } from './deed-props.ts';
import { DeedField } from './unit-ticks.client.tsx';

/** Another unit for one that failed; one of another model is judged by the rules, and new settings are told. */
export function SwapDeed({ view, busy, act }: DeedProps) {
  const units = view.units.filter(({ state }) => ['held', 'allocated', 'picked', 'out'].includes(state));
  const [serial, setSerial] = useState(units[0]?.serial ?? '');
  const [replacement, setReplacement] = useState('');
  const [why, setWhy] = useState('');
  const spares = units.find((unit) => unit.serial === serial)?.spares ?? [];
  const swap = () =>
    act<UnitSwapped>({
      body: { deed: 'swap', serial, replacement: replacement.trim().toUpperCase(), why },
      done: ({ lines, replacement: other }) =>
        lines.length === 0
          ? { tone: 'good', words: `${other} takes the place of ${serial}, which goes into quarantine.` }
          : {
              tone: 'warning',
              words: `${other} fits, with other settings. Tell the crew: ${lines.map(({ tag, settings }) => `${tag}: ${settings}`).join('. ')}.`,
            },
    });
  return (
    <details>
      <summary>Swap a unit that failed</summary>
      <div className="fields">
        <div>
          <label htmlFor="swap-unit">Unit that failed</label>
          <select id="swap-unit" value={serial} onChange={(event) => setSerial(event.target.value)}>
            {units.map((unit) => (
              <option key={unit.serial}>{unit.serial}</option>
            ))}
          </select>
        </div>
        <DeedField id="swap-other" label="Scan or type the other" value={replacement} onChange={setReplacement} />
        <DeedField id="swap-why" label="What is wrong" value={why} onChange={setWhy} />
      </div>
      <p className="soft">
        {spares.length === 0
          ? 'None of the same model is free for the days left; one of another model is judged by the rules on every line that uses it.'
          : `Of the same model and free: ${spares.slice(0, 6).join(', ')}${spares.length > 6 ? ` and ${spares.length - 6} more` : ''}.`}
      </p>
      <button type="button" className="main" disabled={busy || replacement.trim() === ''} onClick={() => void swap()}>
        Swap
      </button>
    </details>
  );
}
