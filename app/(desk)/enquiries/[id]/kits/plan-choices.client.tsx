'use client';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { countText } from '#lib/documents/words/print-values.ts';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';

type Choices = EnquiryView['constraints'];

/** The choice that was made last, and what stood before it. */
export interface Changed {
  readonly told: string;
  readonly before: Choices;
}

interface ListProps {
  readonly choices: Choices;
  readonly names: Readonly<Record<string, string>>;
  readonly busy: boolean;
  readonly last: Changed | null;
  readonly change: (next: Choices, told: string) => void;
}

const TAGS_TOLD = 3;

export function linesText(tags: readonly string[]): string {
  const [first = ''] = tags;
  if (tags.length === 1) return `Line ${first} is`;
  const more = tags.length - TAGS_TOLD;
  const named = tags.slice(0, TAGS_TOLD).join(', ');
  return `${countText(tags.length, 'line')} (${named}${more > 0 ? ` and ${more} more` : ''}) are`;
}

/** What a person laid on the plan, each to be taken back by itself, and the last one to be undone. */
export function ChoicesList({ choices, names, busy, last, change }: ListProps) {
  const chips = chipsOf(choices, names);
  return (
    <section className={styles.panel} aria-labelledby="choices">
      <h2 id="choices">Your choices</h2>
      {chips.length === 0 ? (
        <p className={styles.soft}>
          None: the plan may use any part that fits and is free. Lock a part in, leave one out or pin lines to one
          below; the plan is then worked out again.
        </p>
      ) : (
        <ul className={`${styles.bare} ${styles.row}`}>
          {chips.map((chip) => (
            <li key={chip.words} className={styles.chip}>
              {chip.words}
              <button
                type="button"
                className={styles.small}
                disabled={busy}
                aria-label={`Take back: ${chip.words}`}
                onClick={() => change(chip.next, `Taken back: ${chip.words}`)}
              >
                Take back
              </button>
            </li>
          ))}
        </ul>
      )}
      <div aria-live="polite">
        {last === null ? null : (
          <p className={styles.row}>
            <span>{last.told}.</span>
            <button type="button" className={styles.small} disabled={busy} onClick={() => change(last.before, '')}>
              Undo
            </button>
          </p>
        )}
      </div>
    </section>
  );
}

interface Chip {
  readonly words: string;
  readonly next: Choices;
}

function chipsOf(choices: Choices, names: ListProps['names']): readonly Chip[] {
  const { lockedParts, excludedParts, pins } = choices;
  const name = (part: string): string => `${names[part] ?? 'unknown part'} (${part})`;
  const pinned = [...new Set(pins.map(({ part }) => part))];
  return [
    ...lockedParts.map((part) => ({
      words: `Locked in: ${name(part)}`,
      next: { ...choices, lockedParts: lockedParts.filter((other) => other !== part) },
    })),
    ...excludedParts.map((part) => ({
      words: `Left out: ${name(part)}`,
      next: { ...choices, excludedParts: excludedParts.filter((other) => other !== part) },
    })),
    ...pinned.map((part) => ({
      words: `${linesText(pins.filter((pin) => pin.part === part).map(({ tag }) => tag))} done with ${name(part)}`,
      next: { ...choices, pins: pins.filter((pin) => pin.part !== part) },
    })),
  ];
}
