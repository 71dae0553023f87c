'use client';

import type { FormEvent } from 'react';
import { SaidLine } from '../../../_blocks/said.tsx';
import { useSound } from '../../../_blocks/use-sound.client.ts';
import { useYardDeed } from '../../../_blocks/use-yard-deed.client.ts';

/** A new bay at the end of the walk or at a place of it; a known one gets another place or note. */
export function MakeBay({ depot }: { readonly depot: string }) {
  const { sound } = useSound();
  const { deed, said, busy } = useYardDeed(sound);
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = event.currentTarget;
    const fields = new FormData(form);
    const place = String(fields.get('place')).trim();
    const body = {
      depot,
      bay: String(fields.get('bay')),
      note: String(fields.get('note')),
      ...(place === '' ? {} : { walkOrder: Number(place) }),
    };
    void deed<{ readonly bay: string }>({
      path: '/api/v1/stock/bays',
      body,
      done: ({ bay }) => `${bay} is there: print its label.`,
    }).then((isDone) => isDone && form.reset());
  };
  return (
    <form className="panel" onSubmit={submit} aria-label="Make a bay">
      <h2>Make a bay, or give one another place</h2>
      <div className="fields">
        <label>
          Name
          <input name="bay" required maxLength={12} autoComplete="off" autoCapitalize="characters" />
        </label>
        <label>
          Place on the walk
          <input name="place" type="number" min={0} max={100000} inputMode="numeric" placeholder="at the end" />
        </label>
        <label>
          Note
          <input name="note" maxLength={200} autoComplete="off" />
        </label>
      </div>
      <p className="tools">
        <button type="submit" className="main" disabled={busy}>
          Keep it
        </button>
      </p>
      <SaidLine said={said} />
    </form>
  );
}
