import styles from '#app/_ui/plan/plan-sheet.module.css';
import { measureFirstText } from '#lib/documents/words/measure-first-words.ts';
import type { LineDetail } from '#lib/services/lines/open-line.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

interface MeasureFirstProps {
  readonly duty: LineDetail['duty'];
  readonly system: UnitSystem;
}

/** The one measurement that narrows the answer most, and by how much. */
export function LineMeasureFirst({ duty, system }: MeasureFirstProps) {
  const text = measureFirstText(duty, system);
  if (text === null) return null;
  return (
    <div className={styles.calm}>
      <p>
        <strong>Measure this first:</strong> {text}
      </p>
    </div>
  );
}
