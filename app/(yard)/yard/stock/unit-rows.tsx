import Link from 'next/link';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { FoundUnit } from '#lib/services/stock/find-units.ts';
import { UnitState } from '../../_blocks/unit-state.tsx';

/** Units one below the other; the serial number leads to the unit. */
export function UnitRows({ rows }: { readonly rows: readonly FoundUnit[] }) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th scope="col">Serial</th>
            <th scope="col" className="wide-only">
              Model
            </th>
            <th scope="col">Bay</th>
            <th scope="col">State</th>
            <th scope="col" className="wide-only">
              Next check
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.serial}>
              <th scope="row">
                <Link className="tag" href={`/yard/stock/${row.serial}`}>
                  {row.serial}
                </Link>
                <small className="narrow-only">{row.name}</small>
              </th>
              <td className="wide-only">
                {row.model} {row.name}
              </td>
              <td>
                {row.depot} {row.bay}
              </td>
              <td>
                <UnitState state={row.state} />
                {row.overdue && <span className="mark refusal">check overdue</span>}
              </td>
              <td className="wide-only">{row.dueOn === null ? '—' : <ShownDate on={row.dueOn} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
