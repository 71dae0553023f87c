import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { countText } from '#lib/documents/words/print-values.ts';
import type { Coverage, CoverageRow } from '#lib/services/plans/coverage-view.ts';
import chart from './frontier.module.css';

interface CoverageProps {
  readonly coverage: Coverage;
  readonly names: Readonly<Record<string, string>>;
  readonly roles: Readonly<Record<string, string>>;
  /** What leaving a piece out would lose or cost, where that was worked out. */
  readonly without: ReadonlyMap<string, string>;
}

/** What each piece is needed for: one strip a piece, the same valves at the same place in every strip. */
export function PlanCoverage({ coverage, names, roles, without }: CoverageProps) {
  const groups = Object.entries(ROLE_NAMES).flatMap(([role, heading]) => {
    const rows = coverage.rows.filter(({ number }) => roles[number] === role);
    return rows.length === 0 ? [] : [{ heading, rows }];
  });
  return (
    <>
      <p className={styles.lead}>
        {coverage.valves === 1
          ? 'Each strip is the one valve of the plan; filled where the piece is needed.'
          : `Each strip is all ${countText(coverage.valves, 'valve')} of the plan in the same order, equal lines beside each other; filled where the piece is needed.`}
      </p>
      {groups.map(({ heading, rows }) => (
        <section key={heading} aria-label={heading}>
          <h3>{heading}</h3>
          <ul className={chart.cover}>
            {rows.map((row) => (
              <li key={row.number}>
                <span>
                  {row.count} × {names[row.number] ?? ''} <span className={styles.soft}>{row.number}</span>
                </span>
                <Strip row={row} coverage={coverage} />
                <span className={styles.soft}>
                  {countText(row.valves, 'valve')}
                  {': '}
                  {row.tags.slice(0, 4).join(', ')}
                  {row.lines > 4 ? ` and ${row.lines - 4} more` : ''}.{' '}
                  {without.has(row.number) ? <strong>{without.get(row.number)}</strong> : null}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

/** Bands as wide as they have valves. */
function Strip({ row, coverage }: { readonly row: CoverageRow; readonly coverage: Coverage }) {
  let from = 0;
  const bands = coverage.bands.map((band, index) => {
    const width = (band.valves / Math.max(1, coverage.valves)) * 100;
    const at = from;
    from += width;
    return { band, index, at, width, share: row.shares[index] ?? 0 };
  });
  const told = `${row.number}: needed for ${row.valves} of ${countText(coverage.valves, 'valve')}`;
  return (
    <svg className={chart.strip} viewBox="0 0 100 10" preserveAspectRatio="none" role="img" aria-label={told}>
      {bands.map(({ band, index, at, width, share }) => (
        <g key={index}>
          <title>{`${band.tags.join(', ')}: ${share === 0 ? 'not needed' : share === 1 ? 'needed' : 'needed for some'}`}</title>
          <rect className={chart.trough} x={at} y={0} width={width} height={10} />
          <rect
            className={chart.need}
            x={at + width * 0.04}
            y={10 - 10 * share}
            width={width * 0.92}
            height={10 * share}
          />
        </g>
      ))}
    </svg>
  );
}
