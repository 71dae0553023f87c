import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownCeiling, ShownMark, ShownQuantity } from '#app/_ui/shown-units.client.tsx';
import { AT_THE_VALVE } from '#lib/documents/words/safety-words.ts';
import type { LineDetail } from '#lib/services/lines/open-line.ts';

type Assembly = LineDetail['assemblies'][number];
type Settings = Assembly['opening'];
type Limit = NonNullable<Settings['unseat']>;

/** Limiter settings each way, with the words that belong beside them. */
export function LineSettings({ assembly }: { readonly assembly: Assembly }) {
  const { figures } = assembly;
  return (
    <>
      <PlanWide label="Limiter settings">
        <table className={styles.table}>
          <caption>
            Settings are on the limiter’s own scale; in brackets what arrives at the valve. They are estimates until
            measured.
          </caption>
          <thead>
            <tr>
              <th scope="col">Phase</th>
              <th scope="col" className={styles.number}>
                Start at
              </th>
              <th scope="col" className={styles.number}>
                Raise by
              </th>
              <th scope="col" className={styles.number}>
                Never past
              </th>
              <th scope="col">Select on the drive</th>
              <th scope="col" className={styles.number}>
                Speed
              </th>
              <th scope="col" className={styles.number}>
                Time for a stroke
              </th>
            </tr>
          </thead>
          <tbody>
            {rowsOf('Opening', assembly.opening)}
            {rowsOf('Closing', assembly.closing)}
          </tbody>
        </table>
      </PlanWide>
      <p>
        {figures.limiterRequired ? <strong>Torque limiter required. </strong> : null}
        {figures.counterRequired ? <strong>Turns counter required. </strong> : null}
        At most <ShownQuantity value={figures.highestAtValve} unit="N·m" /> can reach the valve at the ceiling
        {figures.stallAtValve > figures.highestAtValve && (
          <>
            ; <ShownQuantity value={figures.stallAtValve} unit="N·m" /> if nothing limited it
          </>
        )}
        . The chain surely gives <ShownQuantity value={figures.sureAtValve} unit="N·m" />. The restraint takes{' '}
        <ShownQuantity value={figures.reactionForce} unit="N" />.
      </p>
      <div className={styles.notice}>
        <ul className={styles.list}>
          {AT_THE_VALVE.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
    </>
  );
}

function rowsOf(direction: string, settings: Settings) {
  const phases = [
    { name: 'unseat', limit: settings.unseat },
    { name: 'run', limit: settings.run },
    { name: 'seat', limit: settings.seat },
  ].filter((phase) => phase.limit !== null);
  const rows = phases.length === 0 ? [{ name: 'whole stroke', limit: null }] : phases;
  return rows.map(({ name, limit }) => (
    <tr key={`${direction} ${name}`}>
      <th scope="row">
        {direction}, {name}
        {limit !== null && !limit.coversStarting ? (
          <>
            <br />
            <span className={styles.warning}>may not move: agree before hire</span>
          </>
        ) : null}
      </th>
      <LimitCells limit={limit} />
      <td>{settings.select}</td>
      <td className={styles.number}>
        <ShownQuantity value={settings.speed} unit="1/min" />
      </td>
      <td className={styles.number}>
        <ShownQuantity value={settings.strokeTime.low} unit="s" /> to{' '}
        <ShownQuantity value={settings.strokeTime.high} unit="s" />
      </td>
    </tr>
  ));
}

function LimitCells({ limit }: { readonly limit: Limit | null }) {
  if (limit === null) {
    return <td colSpan={3}>no limiter: the drive cannot reach the lowest bound</td>;
  }
  return (
    <>
      <td className={styles.number}>
        <ShownMark value={limit.start} />{' '}
        <span className={styles.soft}>
          (<ShownQuantity value={limit.atValve.start} unit="N·m" />)
        </span>
      </td>
      <td className={styles.number}>
        <ShownMark value={limit.step} />
      </td>
      <td className={styles.number}>
        <ShownMark value={limit.ceiling} />{' '}
        <span className={styles.soft}>
          (<ShownCeiling value={limit.atValve.ceiling} />)
        </span>
      </td>
    </>
  );
}
