import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownQuantity } from '#app/_ui/shown-units.client.tsx';
import { chanceText, WHAT_THE_CHANCE_IS } from '#lib/documents/words/chance-words.ts';
import type { LineDetail } from '#lib/services/lines/open-line.ts';
import { assemblyNames } from './line-parts.ts';

interface AssembliesProps {
  readonly detail: LineDetail;
  readonly names: Readonly<Record<string, string>>;
}

/** Other ways to do the line; none of them is worse than another in everything. */
export function LineAssemblies({ detail, names }: AssembliesProps) {
  const planned = new Set(detail.planned.map(({ assembly }) => assembly.id));
  return (
    <PlanWide label="Assemblies that fit this line">
      <table className={styles.table}>
        <caption>
          No row is worse than another in everything.{' '}
          {detail.more > 0 ? `${detail.more} more are not listed.` : 'The list is complete.'} The chance:{' '}
          {WHAT_THE_CHANCE_IS}
        </caption>
        <thead>
          <tr>
            <th scope="col">Assembly, power source to valve</th>
            <th scope="col" className={styles.number}>
              Time a valve
            </th>
            <th scope="col" className={styles.number}>
              Mass
            </th>
            <th scope="col" className={styles.number}>
              Heaviest piece
            </th>
            <th scope="col" className={styles.number}>
              Sure torque
            </th>
            <th scope="col" className={styles.number}>
              Chance at first visit
            </th>
            <th scope="col">Warnings</th>
          </tr>
        </thead>
        <tbody>
          {detail.assemblies.map((assembly) => (
            <tr key={assembly.id} aria-current={planned.has(assembly.id)}>
              <td className={styles.sentence}>
                {planned.has(assembly.id) ? <strong>✓ in a plan: </strong> : null}
                {assemblyNames(assembly, names).join(' · ')}
              </td>
              <td className={styles.number}>
                <ShownQuantity value={assembly.figures.timePerValve} unit="s" />
              </td>
              <td className={styles.number}>
                <ShownQuantity value={assembly.figures.mass} unit="kg" />
              </td>
              <td className={styles.number}>
                <ShownQuantity value={assembly.figures.heaviestPiece} unit="kg" />
              </td>
              <td className={styles.number}>
                <ShownQuantity value={assembly.figures.sureAtValve} unit="N·m" />
              </td>
              <td className={styles.number}>{chanceText(assembly.figures.chance)}</td>
              <td className={styles.number}>
                {assembly.findings.filter((finding) => finding.severity === 'warning').length}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}
