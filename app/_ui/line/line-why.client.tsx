'use client';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { Finding } from '#lib/kernel/finding.ts';
import type { Reason } from '#lib/kits/why/reason.ts';
import { ReasonTree } from './reason-tree.tsx';

interface WhyProps {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly tag: string;
  readonly groups: readonly {
    readonly heading: string;
    readonly models: readonly { readonly number: string; readonly name: string }[];
  }[];
}

interface PartAnswer {
  readonly fits: boolean;
  readonly because: readonly Finding[];
  readonly reasons: Reason;
}

type Shown =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'asking' }
  | { readonly kind: 'answer'; readonly part: string; readonly answer: PartAnswer }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Asks why a part serves this line, or why it does not. */
export function LineWhy({ enquiryId, lineId, tag, groups }: WhyProps) {
  const [part, setPart] = useState(groups[0]?.models[0]?.number ?? '');
  const [shown, setShown] = useState<Shown>({ kind: 'nothing' });

  async function ask(): Promise<void> {
    setShown({ kind: 'asking' });
    const path = `/api/v1/enquiries/${enquiryId}/lines/${lineId}/parts/${encodeURIComponent(part)}`;
    const sent = await send({ path, method: 'GET' });
    setShown(
      sent.ok
        ? { kind: 'answer', part, answer: sent.value as PartAnswer }
        : { kind: 'refused', sentence: sent.sentence },
    );
  }

  return (
    <form
      className={styles.bare}
      onSubmit={(event) => {
        event.preventDefault();
        ask();
      }}
    >
      <div className={styles.row}>
        <label className={styles.field}>
          Part
          <select className={styles.input} value={part} onChange={(event) => setPart(event.target.value)}>
            {groups.map((group) => (
              <optgroup key={group.heading} label={group.heading}>
                {group.models.map((model) => (
                  <option key={model.number} value={model.number}>
                    {model.name} ({model.number})
                  </option>
                ))}
              </optgroup>
            ))}
          </select>
        </label>
        <button type="submit" className={styles.button} disabled={shown.kind === 'asking' || part === ''}>
          {shown.kind === 'asking' ? 'Working it out…' : 'Why, or why not?'}
        </button>
      </div>
      <div aria-live="polite">
        {shown.kind === 'answer' ? (
          <div className={shown.answer.fits ? styles.calm : styles.refused}>
            <ReasonTree reasons={shown.answer.reasons} label={`Why ${shown.part}, or why not, on ${tag}`} />
          </div>
        ) : null}
        {shown.kind === 'refused' ? <p className={styles.refused}>{shown.sentence}</p> : null}
      </div>
    </form>
  );
}
