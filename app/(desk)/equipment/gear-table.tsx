import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import type { ModelDetail } from '#lib/services/equipment/open-model.ts';

type GearRow = NonNullable<ModelDetail['chart']>['rows'][number];

/** The figures of the torque–speed chart. */
export function GearTable({ rows }: { readonly rows: readonly GearRow[] }) {
  return (
    <div>
      <PlanWide label="Table of gears">
        <table>
          <thead>
            <tr>
              <th scope="col">Gear</th>
              <th scope="col" className="number">
                Stall
              </th>
              <th scope="col" className="number">
                Rated
              </th>
              <th scope="col" className="number">
                Speed at rated
              </th>
              <th scope="col" className="number">
                Free speed
              </th>
              <th scope="col" className="number">
                Power at rated
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.name}>
                <th scope="row">{row.name}</th>
                <td className="number">{row.stall}</td>
                <td className="number">{row.rated}</td>
                <td className="number">{row.speedAtRated}</td>
                <td className="number">{row.freeSpeed}</td>
                <td className="number">{row.powerAtRated}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </PlanWide>
      <p className="soft">
        At the drive’s own output, with a full pack, rated air pressure or at sea level. A head multiplies the torque
        and divides the speed.
      </p>
    </div>
  );
}
