import styles from './plan-sheet.module.css';

/** What a page shows when its use case says no. */
export function PlanRefused({ sentence }: { readonly sentence: string }) {
  return (
    <div className={styles.refused} role="alert">
      <p>
        <strong>Not shown.</strong> {sentence}
      </p>
    </div>
  );
}
