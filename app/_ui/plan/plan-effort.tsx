import type { PlanView } from '#lib/services/plans/plan-view.ts';
import styles from './plan-sheet.module.css';

/** How long each stage took and how much it searched. */
export function PlanEffort({ view }: { readonly view: PlanView }) {
  return (
    <details>
      <summary>Time and effort of each stage</summary>
      <div className={styles.pair}>
        <Counts caption="Time, in milliseconds" counts={view.timings} print={(value) => String(Math.round(value))} />
        <Counts caption="Effort of the search for assemblies" counts={view.effort} print={String} />
        <Counts caption="Effort of sharing out the work, shown plan" counts={view.fleetEffort} print={String} />
      </div>
    </details>
  );
}

interface CountsProps {
  readonly caption: string;
  readonly counts: Readonly<Record<string, number>>;
  readonly print: (value: number) => string;
}

function Counts({ caption, counts, print }: CountsProps) {
  return (
    <table className={styles.table}>
      <caption>{caption}</caption>
      <tbody>
        {Object.entries(counts).map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{spaced(name)}</th>
            <td className={styles.number}>{print(value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** `linearPrograms` and `linear_programs` as words. */
function spaced(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/[_-]/g, ' ')
    .toLowerCase();
}
