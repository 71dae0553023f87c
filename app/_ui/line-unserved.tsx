import type { LineDetail } from '#lib/services/open-line.ts';
import { LineFindings } from './line-findings.tsx';
import styles from './plan-sheet.module.css';
import { ShownSentence } from './shown-units.client.tsx';

/** Why no assembly serves the line, and what would change that. */
export function LineUnserved({ unserved }: { readonly unserved: NonNullable<LineDetail['unserved']> }) {
  return (
    <div className={styles.refused}>
      <p>
        <strong>No equipment serves this line.</strong> These facts and rules cannot all hold:
      </p>
      <LineFindings findings={unserved.because} empty="No reasons were recorded." />
      <h3>It would work</h3>
      {unserved.repairs.length === 0 ? (
        <p>No single change was found that would make it possible; ask the workshop.</p>
      ) : (
        <ul className={styles.list}>
          {unserved.repairs.map((repair) => (
            <li key={repair.sentence}>
              <ShownSentence told={repair} />{' '}
              {repair.cost === undefined ? null : <span className={styles.soft}>({repair.cost})</span>}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
