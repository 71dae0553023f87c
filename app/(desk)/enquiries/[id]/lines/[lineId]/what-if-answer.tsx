import { LineFindings } from '#app/_ui/line/line-findings.tsx';
import { PlanPicture } from '#app/_ui/plan/plan-picture.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import { useUnits } from '#app/_ui/shown-units.client.tsx';
import type { WhatIf } from '#lib/services/lines/what-if.ts';
import { formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';

type Change = NonNullable<WhatIf['change']>;

interface WhatIfAnswerProps {
  readonly change: Change;
  readonly tag: string;
}

/** Before and after: the ladder with both, then figure by figure. */
export function WhatIfAnswer({ change, tag }: WhatIfAnswerProps) {
  const { figures, come, gone, ladder } = change;
  const same = figures.filter(({ changed }) => !changed).map(({ name }) => name.toLowerCase());
  return (
    <div>
      <PlanPicture drawing={ladder} id="what-if-ladder" />
      <FigureTable change={change} tag={tag} />
      {same.length === 0 ? null : <p className={styles.soft}>Unchanged: {same.join('; ')}.</p>}
      {come.length === 0 ? null : (
        <>
          <h3>Findings that would come</h3>
          <LineFindings findings={come} empty="" />
        </>
      )}
      {gone.length === 0 ? null : (
        <>
          <h3>Findings that would go</h3>
          <LineFindings findings={gone} empty="" />
        </>
      )}
    </div>
  );
}

interface Row {
  readonly name: string;
  readonly now: string;
  readonly after: string;
  readonly shift: string;
  readonly basis: string;
}

function FigureTable({ change, tag }: WhatIfAnswerProps) {
  const rows = rowsOf(change, useUnits());
  const words = useWords();
  return (
    <PlanWide label="Before and after">
      <table className={styles.table}>
        <caption>
          {rows.length > 0
            ? `What would change at ${tag}.`
            : 'No torque, bound, speed or number of turns would change.'}
        </caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className={styles.number}>
              Now
            </th>
            <th scope="col" className={styles.number}>
              Then
            </th>
            <th scope="col" className={styles.number}>
              Likely value
            </th>
            <th scope="col">Basis then</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, now, after, shift, basis }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className={styles.number}>{words(now)}</td>
              <td className={styles.number}>
                <strong>{words(after)}</strong>
              </td>
              <td className={styles.number}>{words(shift)}</td>
              <td>{basis}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}

function rowsOf({ figures, windows }: Change, system: UnitSystem): readonly Row[] {
  const torques = figures
    .filter(({ changed }) => changed)
    .map(({ name, before, after }) => ({
      name,
      now: formatRange(before, system),
      after: formatRange(after, system),
      shift: shiftOf(before.nominal, after.nominal),
      basis: after.basis,
    }));
  const limits = windows
    .filter(({ changed }) => changed)
    .map(({ name, before, after }) => ({
      name,
      now: windowText(before, system),
      after: windowText(after, system),
      shift: '',
      basis: 'ideal limiter',
    }));
  return [...torques, ...limits];
}

function windowText(window: Change['windows'][number]['before'], system: UnitSystem): string {
  if (window === null) return 'none fits';
  const text = (value: number) => formatQuantity({ value, unit: 'N·m', system });
  return `${text(window.low)} to ${text(window.high)}`;
}

/** How far the likely value moves, in per cent. */
function shiftOf(before: number, after: number): string {
  if (before === after) return 'same';
  if (before <= 0) return '—';
  const share = (after / before - 1) * 100;
  return `${share > 0 ? '+' : '−'}${Math.abs(share).toFixed(Math.abs(share) < 10 ? 1 : 0)} %`;
}
