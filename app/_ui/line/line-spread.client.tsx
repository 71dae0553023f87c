'use client';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import sheet from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownWords, useWords } from '#app/_ui/shown-forms.client.tsx';
import {
  type SpreadRow,
  spreadRows,
  startsBelowText,
  whatItHangsOn,
  whatTheSpreadIs,
} from '#lib/documents/words/spread-words.ts';
import type { spreadDuty } from '#lib/services/lines/spread-duty.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import styles from './line-spread.module.css';

type Answer = ReturnType<typeof spreadDuty>;
type Spread = Extract<Answer, { ok: true }>['value'];

type Shown =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'asking' }
  | { readonly kind: 'answer'; readonly spread: Spread }
  | { readonly kind: 'refused'; readonly sentence: string };

interface LineSpreadProps {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly system: UnitSystem;
}

/** Where the answer probably lies inside its range: drawn on request only. */
export function LineSpread({ enquiryId, lineId, system }: LineSpreadProps) {
  const [shown, setShown] = useState<Shown>({ kind: 'nothing' });

  async function ask(): Promise<void> {
    setShown({ kind: 'asking' });
    const sent = await send({ path: `/api/v1/enquiries/${enquiryId}/lines/${lineId}/spread`, method: 'GET' });
    setShown(sent.ok ? { kind: 'answer', spread: sent.value as Spread } : { kind: 'refused', sentence: sent.sentence });
  }

  return (
    <div className={styles.block}>
      <button type="button" className={sheet.button} disabled={shown.kind === 'asking'} onClick={ask}>
        {shown.kind === 'asking' ? 'Drawing…' : 'Show where the answer probably lies'}
      </button>
      <div aria-live="polite">
        {shown.kind === 'answer' ? <SpreadTable spread={shown.spread} system={system} /> : null}
        {shown.kind === 'refused' ? <p className={sheet.refused}>{shown.sentence}</p> : null}
      </div>
    </div>
  );
}

function SpreadTable({ spread, system }: { readonly spread: Spread; readonly system: UnitSystem }) {
  const rows = spreadRows(spread);
  const torques = rows.filter(({ unit }) => unit === 'N·m').map((row) => row.spread.high);
  const widest = Math.max(1, ...torques);
  return (
    <>
      <p>
        <ShownWords>{whatItHangsOn(spread, system)}</ShownWords>
      </p>
      <p>
        <ShownWords>{startsBelowText(spread)}</ShownWords>
      </p>
      <PlanWide label="Spread by chance">
        <table className={sheet.table}>
          <caption>{whatTheSpreadIs(spread)}</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" className={sheet.number}>
                Lowest
              </th>
              <th scope="col" className={sheet.number}>
                1 in 20 below
              </th>
              <th scope="col" className={sheet.number}>
                Half below
              </th>
              <th scope="col" className={sheet.number}>
                1 in 20 above
              </th>
              <th scope="col" className={sheet.number}>
                Highest
              </th>
              <th scope="col">Picture</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.name} row={row} system={system} end={row.unit === 'N·m' ? widest : row.spread.high} />
            ))}
          </tbody>
        </table>
      </PlanWide>
    </>
  );
}

interface RowProps {
  readonly row: SpreadRow;
  readonly system: UnitSystem;
  /** Right end of the strip; it starts at nought. */
  readonly end: number;
}

function Row({ row: { name, unit, spread }, system, end }: RowProps) {
  const words = useWords();
  const print = (value: number): string => words(formatQuantity({ value, unit, system }));
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className={sheet.number}>{print(spread.low)}</td>
      <td className={sheet.number}>{print(spread.p5)}</td>
      <td className={sheet.number}>{print(spread.p50)}</td>
      <td className={sheet.number}>{print(spread.p95)}</td>
      <td className={sheet.number}>{print(spread.high)}</td>
      <td>
        <Strip spread={spread} end={end} />
      </td>
    </tr>
  );
}

const WIDTH = 220;
const HEIGHT = 16;

/** A line for the whole range, a bar for nine in ten draws, a mark for the middle; the figures stand beside it. */
function Strip({ spread, end }: { readonly spread: SpreadRow['spread']; readonly end: number }) {
  const x = (value: number): number => 2 + (Math.max(0, value) / Math.max(end, 1e-9)) * (WIDTH - 4);
  return (
    <svg className={styles.strip} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <line
        className={styles.range}
        x1={x(spread.low)}
        x2={Math.max(x(spread.high), x(spread.low) + 1)}
        y1={8}
        y2={8}
      />
      <rect
        className={styles.most}
        x={x(spread.p5)}
        y={4}
        width={Math.max(2, x(spread.p95) - x(spread.p5))}
        height={8}
      />
      <line className={styles.middle} x1={x(spread.p50)} x2={x(spread.p50)} y1={1} y2={15} />
    </svg>
  );
}
