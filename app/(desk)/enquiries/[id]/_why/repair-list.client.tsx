'use client';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownSentence } from '#app/_ui/shown-units.client.tsx';
import type { RepairOffer } from '#lib/services/lines/repair-offers.ts';
import { useCarryOut } from './use-carry-out.client.tsx';

interface RepairsProps {
  readonly enquiryId: number;
  readonly offers: readonly RepairOffer[];
  /** The lines that it is for. */
  readonly lines: { readonly lineIds: readonly number[] } | { readonly tags: readonly string[] };
  /** Whether the plan is worked out again at once. */
  readonly replan: 'yes' | 'no';
}

/** What would make a line possible, each with a button where it can be written here. */
export function RepairList({ enquiryId, offers, lines, replan }: RepairsProps) {
  const { carryOut, busy, problem } = useCarryOut(enquiryId);
  const path = `/api/v1/enquiries/${enquiryId}/repairs`;
  const apply = ({ sentence, inUs, action }: RepairOffer) =>
    carryOut({
      key: sentence,
      action: action ?? '',
      told: { sentence, ...(inUs === undefined ? {} : { inUs }) },
      message: { path, method: 'POST', body: { ...lines, repair: sentence } },
      replan,
    });

  if (offers.length === 0) {
    return (
      <p>
        No change of the line or the site was found that would make it possible, nor two together; ask the workshop.
      </p>
    );
  }
  return (
    <>
      <ul className={styles.bare}>
        {offers.map((offer) => (
          <li key={offer.sentence} className={styles.offer}>
            <span>
              <ShownSentence told={offer} />{' '}
              {offer.cost === undefined ? null : <span className={styles.soft}>({offer.cost})</span>}
            </span>
            {offer.action === null ? (
              <span className={styles.soft}>
                Nothing to press: somebody else decides this; type it into the line or the site once it is known.
              </span>
            ) : (
              <button type="button" className={styles.offerButton} disabled={busy !== ''} onClick={() => apply(offer)}>
                {busy === offer.sentence ? 'Writing it…' : offer.action}
                {offer.reach === 'all lines' ? ' (for all lines)' : ''}
              </button>
            )}
          </li>
        ))}
      </ul>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
