import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownRange, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { LineDetail } from '#lib/services/lines/open-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

type Duty = LineDetail['duty'];

interface DutyRow {
  readonly name: string;
  readonly value: Known<Unit>;
}

/** What the valve needs and must never see; every number with its basis and where it comes from. */
export function LineDuty({ duty }: { readonly duty: Duty }) {
  return (
    <PlanWide label="Duty of the valve">
      <table className={styles.table}>
        <caption>
          Ranges are from the lowest to the highest value that what is known allows. The basis says how far to trust it.
        </caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className={styles.number}>
              Value
            </th>
            <th scope="col">Basis</th>
            <th scope="col">Where it comes from</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(duty).map(({ name, value }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className={styles.number}>
                <ShownRange known={value} />
              </td>
              <td>{value.basis}</td>
              <td className={styles.sentence}>
                <ShownSource source={value.source} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}

function rowsOf(duty: Duty): readonly DutyRow[] {
  const { opening, closing, grip } = duty;
  const optional: readonly { readonly name: string; readonly value: Known<Unit> | null | undefined }[] = [
    { name: 'Stem thrust, opening', value: opening.thrust },
    { name: 'Stem thrust, closing', value: closing.thrust },
    { name: 'Shortest time for a stroke', value: duty.minStrokeTime },
    { name: 'Stem thread, mean diameter', value: duty.thread?.meanDiameter },
    { name: 'Stem thread, lead', value: duty.thread?.lead },
    { name: 'Wheel diameter', value: grip.wheelDiameter },
    { name: 'Dish of the wheel', value: grip.wheelDish },
    { name: 'Depth to the nut', value: grip.depthToNut },
    { name: 'Stem through the wheel, at most', value: grip.stemProtrusion },
    { name: 'Stem diameter', value: grip.stemDiameter },
    { name: 'Travel', value: grip.travel },
    ...(grip.nutSizes ?? []).map((value, index) => ({ name: `Nut across flats, case ${index + 1}`, value })),
  ];
  return [
    { name: 'Torque to start opening', value: opening.starting },
    { name: 'Torque while opening', value: opening.running },
    { name: 'Torque to start closing', value: closing.starting },
    { name: 'Torque while closing', value: closing.running },
    { name: 'Turns for a stroke', value: duty.turns },
    { name: 'Highest input speed', value: duty.maxInputSpeed },
    ...optional.flatMap(({ name, value }) => (value ? [{ name, value }] : [])),
  ];
}

/** Every bound on the torque, the lowest first. */
export function LineBounds({ duty }: { readonly duty: Duty }) {
  const bounds = [...duty.bounds].sort((a, b) => a.torque.low - b.torque.low);
  const decides = [duty.opening.neverExceed, duty.closing.neverExceed];
  return (
    <PlanWide label="Bounds on the torque">
      <table className={styles.table}>
        <caption>What the valve must never see: the lowest bound of a direction decides.</caption>
        <thead>
          <tr>
            <th scope="col">Bound</th>
            <th scope="col">Direction</th>
            <th scope="col" className={styles.number}>
              Torque
            </th>
            <th scope="col">Basis</th>
            <th scope="col">Where it comes from</th>
          </tr>
        </thead>
        <tbody>
          {bounds.map((bound) => (
            <tr key={`${bound.kind} ${bound.directions.join()} ${bound.torque.source}`}>
              <th scope="row">
                {bound.kind}
                {decides.some((other) => other.kind === bound.kind && other.torque.low === bound.torque.low) ? (
                  <span className={styles.soft}> ← decides</span>
                ) : null}
              </th>
              <td>{bound.directions.join(' and ')}</td>
              <td className={styles.number}>
                <ShownRange known={bound.torque} />
              </td>
              <td>{bound.torque.basis}</td>
              <td className={styles.sentence}>
                <ShownSource source={bound.torque.source} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlanWide>
  );
}
