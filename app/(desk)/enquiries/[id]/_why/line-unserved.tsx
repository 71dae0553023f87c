import { LineFindings } from '#app/_ui/line/line-findings.tsx';
import { ReasonTree } from '#app/_ui/line/reason-tree.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import type { LineDetail } from '#lib/services/lines/open-line.ts';
import { RepairList } from './repair-list.client.tsx';

interface UnservedProps {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly unserved: NonNullable<LineDetail['unserved']>;
}

/** Why no assembly serves the line, and what would change that. */
export function LineUnserved({ enquiryId, lineId, unserved }: UnservedProps) {
  return (
    <div className={styles.refused}>
      {unserved.reasons === null ? (
        <LineFindings findings={unserved.because} empty="No reasons were recorded." />
      ) : (
        <ReasonTree reasons={unserved.reasons} label="Why nothing serves this line" />
      )}
      <h3>It would work</h3>
      <RepairList enquiryId={enquiryId} lines={{ lineIds: [lineId] }} offers={unserved.repairs} replan="no" />
    </div>
  );
}
