import type { ReactNode } from 'react';
import styles from './plan-sheet.module.css';

/** Something wider than a narrow screen: it scrolls in its own frame, by keyboard too. */
export function PlanWide({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className={styles.wide} tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
