import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { LineView } from '#lib/services/lines/line-view.ts';
import { VisitUse } from './visit-use.client.tsx';

interface LineVisitsProps {
  readonly known: LineView['known'];
  readonly visits: LineView['visits'];
}

/** What earlier visits know of this valve, what became of it, and the records with their switch. */
export function LineVisits({ known, visits }: LineVisitsProps) {
  if (visits.length === 0) return null;
  return (
    <section className={styles.panel} aria-labelledby="visits">
      <h2 id="visits">Earlier visits</h2>
      {known.length === 0 ? null : (
        <PlanWide label="Known from earlier visits">
          <table className={styles.table}>
            <caption>
              Sizes and turns do not age. Torques do: the calculation below widens them with the years, by rule of
              thumb.
            </caption>
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">Value</th>
                <th scope="col">In this line</th>
                <th scope="col">Where it comes from</th>
              </tr>
            </thead>
            <tbody>
              {known.map(({ column, text, use, source }) => (
                <tr key={column}>
                  <th scope="row">{column.replaceAll('_', ' ')}</th>
                  <td>{text}</td>
                  <td>{use}</td>
                  <td className={styles.sentence}>{source}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </PlanWide>
      )}
      <ul className={styles.bare}>
        {visits.map((visit) => (
          <li key={visit.id}>
            <strong>
              Visit of <ShownDate on={visit.on} /> by {visit.by}
            </strong>
            , {visit.under}: {toldCells(visit.cells)}
            {visit.earlier === 'no' ? ' Not before the first day of this hire, so not used for it.' : ''}
            <VisitUse visitId={visit.id} setAside={visit.setAside} />
          </li>
        ))}
      </ul>
    </section>
  );
}

const LEFT_OUT: ReadonlySet<string> = new Set(['tag', 'visited_on', 'by']);

function toldCells(cells: LineView['visits'][number]['cells']): string {
  const told = Object.entries(cells)
    .filter(([name, text]) => !LEFT_OUT.has(name) && text !== undefined && text.trim() !== '')
    .map(([name, text]) => `${name.replaceAll('_', ' ')} ${text}`);
  return `${told.join('; ')}.`;
}
