import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownSentence, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { Finding } from '#lib/kernel/finding.ts';

const ORDER = { refusal: 0, warning: 1, note: 2 } as const;

/** Findings, the gravest first, each with its authority. */
export function LineFindings({ findings, empty }: { readonly findings: readonly Finding[]; readonly empty: string }) {
  if (findings.length === 0) return <p className={styles.soft}>{empty}</p>;
  const sorted = [...findings].sort((a, b) => ORDER[a.severity] - ORDER[b.severity]);
  return (
    <ul className={styles.bare}>
      {sorted.map((finding) => (
        <li key={`${finding.id} ${finding.sentence}`}>
          <span className={styles[finding.severity]}>{finding.severity}</span> <ShownSentence told={finding} />{' '}
          <span className={styles.soft}>
            (<ShownSource source={finding.source} />)
          </span>
        </li>
      ))}
    </ul>
  );
}
