import { LineFindings } from '#app/_ui/line/line-findings.tsx';
import { LineSteps } from '#app/_ui/line/line-steps.tsx';
import { CREW_DAY_CAUTIONS, crewDayFindings, crewDayRow } from '#lib/documents/words/crew-day-words.ts';
import { countText, massText } from '#lib/documents/words/print-values.ts';
import type { PlanView } from '#lib/services/plans/plan-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import styles from './plan-sheet.module.css';
import { PlanWide } from './plan-wide.tsx';

type Crew = PlanView['crewDays'][number];

/** What each crew's planned days ask of its people: hours, trigger time, vibration, noise, lifts. */
export function CrewDays({ crews, system }: { readonly crews: PlanView['crewDays']; readonly system: UnitSystem }) {
  return (
    <section className={styles.panel} aria-labelledby="crew-days">
      <h2 id="crew-days">What the days ask of the crews</h2>
      {crews.length === 0 ? (
        <p className={styles.soft}>No days are planned: plan again to see them.</p>
      ) : (
        <>
          <p className={styles.lead}>{CREW_DAY_CAUTIONS[0]}</p>
          {crews.map((crew) => (
            <CrewTable key={crew.crew} system={system} {...crew} />
          ))}
          <ul className={`${styles.after} ${styles.soft}`}>
            {CREW_DAY_CAUTIONS.slice(1).map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function CrewTable({ crew, days, heaviestCase, system }: Crew & { readonly system: UnitSystem }) {
  const worst = days.toSorted((a, b) => b.alone.exposure.high - a.alone.exposure.high)[0];
  return (
    <>
      <h3 id={`days-${crew}`}>
        Crew {crew}: {countText(days.length, 'day')}
        {heaviestCase === null ? '' : `; heaviest case ${massText(heaviestCase.mass_kg, system)}, ${heaviestCase.lift}`}
      </h3>
      <PlanWide label={`Days of crew ${crew}`}>
        <table className={styles.table} aria-labelledby={`days-${crew}`}>
          <DayHead />
          <tbody>
            {days.map((day) => (
              <DayRow key={day.day} row={crewDayRow(day, system)} />
            ))}
          </tbody>
        </table>
      </PlanWide>
      <div className={styles.told}>
        <LineFindings findings={crewDayFindings(days)} empty="No action value is passed on these days." />
      </div>
      {worst === undefined ? null : <LineSteps title={`How day ${worst.day} was worked out`} steps={worst.steps} />}
    </>
  );
}

const COLUMNS = [
  'Valves',
  'Work',
  'At the drive',
  'A(8) m/s²',
  'Points',
  'A(8) in turns',
  'L_EX,8h dB(A)',
  'Heaviest piece',
];

function DayHead() {
  return (
    <thead>
      <tr>
        <th scope="col">Day, and what it passes</th>
        {COLUMNS.map((column) => (
          <th key={column} scope="col" className={styles.number}>
            {column}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function DayRow({ row }: { readonly row: ReturnType<typeof crewDayRow> }) {
  const cells = [row.valves, row.hours, row.trigger, row.vibration, row.points, row.turns, row.noise, row.lift];
  return (
    <tr>
      <th scope="row">
        {row.day}
        {row.marks.map((mark) => (
          <span key={mark} className={styles.under}>
            <span className={mark.endsWith('limit') ? styles.refusal : styles.warning}>{mark}</span>
          </span>
        ))}
      </th>
      {cells.map((cell, index) => (
        <td key={COLUMNS[index]} className={styles.number}>
          {cell}
        </td>
      ))}
    </tr>
  );
}
