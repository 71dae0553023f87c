'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { NewUnitForm } from '#lib/services/stock/new-unit-form.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useAct } from '../../../_blocks/use-act.client.ts';

const EMPTY = { serial: '', model: '', depot: '', bay: '', inspectionDueOn: '', calibrationDueOn: '', note: '' };

/** A piece that the house has bought: its number, what it is, where it stands and what it brings. */
export function AddUnitForm({ models, depots, bays }: NewUnitForm) {
  const router = useRouter();
  const [facts, setFacts] = useState({ ...EMPTY, depot: depots[0]?.code ?? '' });
  const { act, said, busy } = useAct('/api/v1/stock');
  const field = (name: keyof typeof EMPTY) => ({
    id: `unit-${name}`,
    value: facts[name],
    onChange: (event: { readonly target: { readonly value: string } }) =>
      setFacts({ ...facts, [name]: event.target.value }),
  });
  return (
    <form
      className="panel"
      onSubmit={(event) => {
        event.preventDefault();
        void act<{ serial: string }>({ body: facts, done: () => null }).then(
          (added) => added !== null && router.push(`/yard/stock/${added.serial}`),
        );
      }}
    >
      <div className="fields">
        <div>
          <label htmlFor="unit-serial">Serial number</label>
          <input {...field('serial')} required autoComplete="off" autoCapitalize="characters" />
        </div>
        <div>
          <label htmlFor="unit-model">Model</label>
          <select {...field('model')} required>
            <option value="">choose</option>
            {models.map(({ number, name }) => (
              <option key={number} value={number}>
                {number} {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="unit-depot">Depot</label>
          <select {...field('depot')}>
            {depots.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="unit-bay">Bay</label>
          <select {...field('bay')} required>
            <option value="">choose</option>
            {bays
              .filter(({ depot }) => depot === facts.depot)
              .map(({ code }) => (
                <option key={code}>{code}</option>
              ))}
          </select>
        </div>
        <CheckFields field={field} />
      </div>
      <p>
        <button type="submit" className="main" disabled={busy} aria-busy={busy}>
          Add the unit
        </button>
      </p>
      <SaidLine said={said} />
    </form>
  );
}

type Field = (name: keyof typeof EMPTY) => {
  readonly id: string;
  readonly value: string;
  readonly onChange: (event: { readonly target: { readonly value: string } }) => void;
};

function CheckFields({ field }: { readonly field: Field }) {
  return (
    <>
      <div>
        <label htmlFor="unit-inspectionDueOn">Next inspection</label>
        <input type="date" {...field('inspectionDueOn')} />
      </div>
      <div>
        <label htmlFor="unit-calibrationDueOn">Next calibration</label>
        <input type="date" {...field('calibrationDueOn')} />
      </div>
      <div>
        <label htmlFor="unit-note">Note</label>
        <input {...field('note')} />
      </div>
    </>
  );
}
