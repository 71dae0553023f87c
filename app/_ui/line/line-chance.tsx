import styles from '#app/_ui/plan/plan-sheet.module.css';
import { chanceText, WHAT_THE_CHANCE_IS } from '#lib/documents/words/chance-words.ts';

/** The chance of an assembly, never without what it is. */
export function LineChance({ chance }: { readonly chance: number }) {
  return (
    <p className={styles.soft}>
      Chance that the kit moves the valve at the first visit: <strong>{chanceText(chance)}</strong>.{' '}
      {WHAT_THE_CHANCE_IS}
    </p>
  );
}
