'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { BayInFull } from '#lib/services/stock/open-bays.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { SaidLine } from '../../../_blocks/said.tsx';
import { ScanField } from '../../../_blocks/scan-field.client.tsx';
import { useSound } from '../../../_blocks/use-sound.client.ts';
import { useYardDeed } from '../../../_blocks/use-yard-deed.client.ts';
import styles from './bays.module.css';

interface BayActsProps {
  readonly bay: BayInFull;
  readonly depot: string;
}

/** Units come in by scan; a scanned bay goes on with that one. Renaming and taking away stand behind a press. */
export function BayActs({ bay, depot }: BayActsProps) {
  const router = useRouter();
  const { sound } = useSound();
  const { deed, said, busy } = useYardDeed(sound);
  const own = `/api/v1/stock/bays/${depot}/${encodeURIComponent(bay.code)}`;
  const showBay = (code: string): void => router.push(`/yard/stock/bays?depot=${depot}&bay=${code}`);
  const take = (text: string): void => {
    const scan = readScan(text);
    if (scan.kind === 'bay') {
      router.push(`/yard/stock/bays?depot=${scan.depot}&bay=${scan.bay}`);
      return;
    }
    const serial = scan.kind === 'unit' ? scan.serial : text.trim();
    void deed<{ readonly bay: string }>({
      path: `/api/v1/stock/${encodeURIComponent(serial)}`,
      body: { act: 'move', to: `BAY:${depot}/${bay.code}` },
      done: () => `${serial} stands in ${bay.code} now.`,
    });
  };
  const rename = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const to = String(new FormData(event.currentTarget).get('to')).trim();
    void deed<{ readonly bay: string }>({
      path: own,
      body: { to },
      done: ({ bay: named }) => `It is called ${named} now: print its label anew.`,
    }).then((isDone) => isDone && showBay(to.toUpperCase()));
  };
  return (
    <>
      <ScanField
        label={`Scan what stands in ${bay.code} from now on`}
        help="A unit moves here. The label of another bay goes on with that bay."
        onScan={take}
      />
      <SaidLine said={said} />
      <details>
        <summary>Rename or take away</summary>
        <form className={styles.find} onSubmit={rename}>
          <label>
            New name
            <input name="to" required maxLength={12} defaultValue={bay.code} autoComplete="off" />
          </label>
          <button type="submit" disabled={busy}>
            Rename, with all that stands in it
          </button>
        </form>
        <TakeAway
          isEmpty={bay.units + bay.boxes === 0}
          busy={busy}
          onTake={() => {
            void deed({ path: own, method: 'DELETE', done: () => `${bay.code} is taken away.` }).then(
              (isDone) => isDone && showBay(''),
            );
          }}
        />
      </details>
    </>
  );
}

interface TakeAwayProps {
  readonly isEmpty: boolean;
  readonly busy: boolean;
  readonly onTake: () => void;
}

function TakeAway({ isEmpty, busy, onTake }: TakeAwayProps) {
  const [isAsked, setAsked] = useState(false);
  if (!isEmpty) return <p className="soft">It can be taken away once it is empty.</p>;
  return isAsked ? (
    <p className="tools">
      <button type="button" className="danger" disabled={busy} onClick={onTake}>
        Yes, take it away
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        Keep it
      </button>
    </p>
  ) : (
    <p>
      <button type="button" onClick={() => setAsked(true)}>
        Take the bay away
      </button>
    </p>
  );
}
