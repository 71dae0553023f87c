import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { QuoteChanges } from '#lib/documents/words/quote-changes.ts';

/** What the next revision would change, as it will stand on its first page. */
export function PriceChanges({ changes }: { readonly changes: QuoteChanges }) {
  return (
    <section className={styles.panel} aria-labelledby="changes">
      <h2 id="changes">Changed since {changes.since}</h2>
      {changes.groups.map(({ about, sentences }) => (
        <div key={about}>
          <h3>{about}</h3>
          <ul className={styles.list}>
            {sentences.map((sentence) => (
              <li key={sentence}>
                <ShownWords>{sentence}</ShownWords>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
