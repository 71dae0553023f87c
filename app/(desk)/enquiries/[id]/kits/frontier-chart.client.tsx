'use client';
import { type KeyboardEvent, useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { wholeAmount } from '#app/_ui/plan/plan-words.ts';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import chart from './frontier.module.css';
import type { FrontierRow } from './frontier-rows.ts';
import { useAdopt } from './use-adopt.client.tsx';

const WIDE = 640;
const HIGH = 300;
const PAD = { left: 78, right: 20, top: 28, bottom: 44 };
const ASIDE = 13;
const STEPS = 4;

interface FrontierProps {
  readonly enquiryId: number;
  readonly rows: readonly FrontierRow[];
}

/** Least cost against days, one line a count of crews; a plan is picked in the picture or in the table. */
export function FrontierChart({ enquiryId, rows }: FrontierProps) {
  const [picked, setPicked] = useState(rows.find(({ isNow }) => isNow)?.key ?? '');
  const { adopt, busy, problem } = useAdopt({ enquiryId, kind: 'frontier' });
  const row = rows.find(({ key }) => key === picked);
  return (
    <>
      <PlanWide label="Cost against days">
        <Picture rows={rows} picked={picked} pick={setPicked} />
      </PlanWide>
      <Legend rows={rows} />
      <div aria-live="polite">
        {row === undefined ? null : (
          <p className={`${styles.calm} ${styles.row}`}>
            <span>
              <strong>{row.terms}:</strong> {row.cost}, {row.served} valves, {row.hours} of work, {row.pieces} pieces.{' '}
              {row.proof}.
            </span>
            {row.isNow ? (
              <span className={styles.soft}>This is what the enquiry asks now.</span>
            ) : (
              <button
                type="button"
                className={styles.button}
                disabled={busy !== ''}
                onClick={() =>
                  adopt({
                    key: row.key,
                    action: `the enquiry is for ${row.terms}`,
                    sentence: `At ${row.terms} the plan of least cost comes to ${row.cost} and serves ${row.served} valves.`,
                  })
                }
              >
                {busy === row.key ? 'Taking it…' : `Ask for ${row.terms} and plan again`}
              </button>
            )}
          </p>
        )}
      </div>
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      <details>
        <summary>The same figures as a table</summary>
        <FrontierTable rows={rows} picked={picked} pick={setPicked} />
      </details>
    </>
  );
}

interface PickProps {
  readonly rows: readonly FrontierRow[];
  readonly picked: string;
  readonly pick: (key: string) => void;
}

function Picture({ rows, picked, pick }: PickProps) {
  const scale = scaleOf(rows);
  const crews = [...new Set(rows.map((row) => row.crews))];
  // Equal plans of other crews stand beside each other, not on top.
  const aside = (series: number): number => (series - (crews.length - 1) / 2) * ASIDE;
  const currency = rows[0]?.cost.split(' ').at(-1) ?? '';
  return (
    <svg className={chart.frontier} viewBox={`0 0 ${WIDE} ${HIGH}`} role="group" aria-label="Plans by days and cost">
      <text x={PAD.left} y={12}>
        equipment and time, {currency}
      </text>
      {scale.costs.map((cost) => (
        <g key={cost}>
          <line className={chart.grid} x1={PAD.left} x2={WIDE - PAD.right} y1={scale.y(cost)} y2={scale.y(cost)} />
          <text x={PAD.left - 8} y={scale.y(cost) + 4} textAnchor="end">
            {wholeAmount(cost, currency)}
          </text>
        </g>
      ))}
      {scale.days.map((day) => (
        <text key={day} x={scale.x(day)} y={HIGH - PAD.bottom + 18} textAnchor="middle">
          {day}
        </text>
      ))}
      <text x={(WIDE + PAD.left) / 2} y={HIGH - 6} textAnchor="middle">
        days of hire
      </text>
      {crews.map((count, index) => (
        <polyline
          key={count}
          className={chart[`series${index % 3}`]}
          points={rows
            .filter((row) => row.crews === count)
            .map((row) => `${scale.x(row.days) + aside(index)},${scale.y(row.cost_minor)}`)
            .join(' ')}
        />
      ))}
      {rows.map((row) => (
        <Point
          key={row.key}
          row={row}
          at={{ x: scale.x(row.days) + aside(crews.indexOf(row.crews)), y: scale.y(row.cost_minor) }}
          series={crews.indexOf(row.crews)}
          isPicked={row.key === picked}
          pick={pick}
        />
      ))}
    </svg>
  );
}

interface PointProps {
  readonly row: FrontierRow;
  readonly at: { readonly x: number; readonly y: number };
  readonly series: number;
  readonly isPicked: boolean;
  readonly pick: (key: string) => void;
}

function Point({ row, at, series, isPicked, pick }: PointProps) {
  const press = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    pick(row.key);
  };
  const kinds = [chart.point, chart[`mark${series % 3}`], row.isWhole ? '' : chart.part, isPicked ? chart.picked : ''];
  return (
    <g
      role="button"
      tabIndex={0}
      aria-pressed={isPicked}
      aria-label={`${row.terms}: ${row.cost}, ${row.served} valves${row.isBest ? ', nothing better in all three' : ''}`}
      className={kinds.join(' ')}
      onClick={() => pick(row.key)}
      onKeyDown={press}
    >
      <circle className={chart.reach} cx={at.x} cy={at.y} r={14} />
      {row.isBest ? <circle className={chart.ring} cx={at.x} cy={at.y} r={10} /> : null}
      <Mark at={at} series={series} />
    </g>
  );
}

/** Circle, square, triangle: shape tells the crews apart, not colour. */
function Mark({ at: { x, y }, series }: Pick<PointProps, 'at' | 'series'>) {
  if (series % 3 === 0) return <circle cx={x} cy={y} r={5.5} />;
  if (series % 3 === 1) return <rect x={x - 5} y={y - 5} width={10} height={10} />;
  return <path d={`M${x} ${y - 6.5} L${x + 6.5} ${y + 5} L${x - 6.5} ${y + 5} Z`} />;
}

function Legend({ rows }: { readonly rows: readonly FrontierRow[] }) {
  const crews = [...new Set(rows.map((row) => row.crews))];
  return (
    <ul className={`${styles.bare} ${chart.legend}`}>
      {crews.map((count, index) => (
        <li key={count}>
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" className={chart[`mark${index % 3}`]}>
            <Mark at={{ x: 8, y: 8 }} series={index} />
          </svg>{' '}
          {count} {count === 1 ? 'crew' : 'crews'}
        </li>
      ))}
      <li className={styles.soft}>
        Ringed: no other plan is as good in days, cost and valves. Hollow: not all valves.
      </li>
    </ul>
  );
}

function FrontierTable({ rows, picked, pick }: PickProps) {
  return (
    <PlanWide label="Plans by days and crews">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Days and crews</th>
            <th scope="col" className={styles.number}>
              Equipment and time
            </th>
            <th scope="col" className={styles.number}>
              Valves
            </th>
            <th scope="col" className={styles.number}>
              Hours
            </th>
            <th scope="col" className={styles.number}>
              Pieces
            </th>
            <th scope="col">Could be better by</th>
            <th scope="col">Best of its kind</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} aria-current={row.key === picked}>
              <th scope="row">
                <button
                  type="button"
                  className={styles.small}
                  aria-pressed={row.key === picked}
                  onClick={() => pick(row.key)}
                >
                  {row.terms}
                </button>
              </th>
              <td className={styles.number}>{row.cost}</td>
              <td className={styles.number}>{row.served}</td>
              <td className={styles.number}>{row.hours}</td>
              <td className={styles.number}>{row.pieces}</td>
              <td>
                <ShownWords>{row.gap}</ShownWords>
              </td>
              <td>{row.isBest ? 'yes' : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}

function scaleOf(rows: readonly FrontierRow[]) {
  const costs = rows.map((row) => row.cost_minor);
  const low = Math.min(...costs);
  const high = Math.max(...costs, low + 100);
  const margin = (high - low) * 0.08;
  const from = Math.max(0, low - margin);
  const to = high + margin;
  const days = [...new Set(rows.map((row) => row.days))].sort((a, b) => a - b);
  const [first = 1] = days;
  const span = Math.max(1, (days.at(-1) ?? first) - first);
  const inner = WIDE - PAD.left - PAD.right - 24;
  return {
    days,
    costs: Array.from({ length: STEPS + 1 }, (_, index) => from + ((to - from) * index) / STEPS),
    x: (day: number) => PAD.left + 12 + ((day - first) / span) * inner,
    y: (cost: number) => HIGH - PAD.bottom - ((cost - from) / (to - from)) * (HIGH - PAD.top - PAD.bottom),
  };
}
