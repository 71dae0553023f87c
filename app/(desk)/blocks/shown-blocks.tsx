import { Waiting } from '#app/_ui/waiting.tsx';
import { IncomeChart } from '../_home/income-chart.tsx';

const MONTHS = [120_000, 0, 340_000, 95_000, 210_000, 60_000].map((net_minor, index) => ({
  month: `2026-0${index + 1}`,
  net_minor,
  quotes: net_minor === 0 ? 0 : 2,
}));

/** A table in its frame, with tabs and tools above it. */
export function TableBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-tables">
      <h2 id="blocks-tables">Tabs, filters, tables</h2>
      <nav className="tabs" aria-label="Tabs to look at">
        <a href="#blocks-tables" aria-current="page">
          Schedule
        </a>
        <a href="#blocks-tables">Kits</a>
        <a href="#blocks-tables">Price &amp; papers</a>
      </nav>
      <div className="tools">
        <div>
          <label htmlFor="blocks-find">Find in the schedule</label>
          <input id="blocks-find" type="search" />
        </div>
        <button type="button">Show</button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard. */}
      <div className="wide" role="region" aria-label="Valves to look at" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th>Tag</th>
              <th>Driven by</th>
              <th className="number">Turns</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <td className="tag">SV-101</td>
              <td>key cap</td>
              <td className="number">18</td>
            </tr>
            <tr>
              <td className="tag">SV-102</td>
              <td>handwheel</td>
              <td className="number">17.7…37.8</td>
            </tr>
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** Nothing yet, and on its way. */
export function EmptyBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-empty">
      <h2 id="blocks-empty">Empty and waiting</h2>
      <div className="columns">
        <div className="empty">
          <p>No line yet: take in a list, or add a line.</p>
          <button type="button">Take in a list</button>
        </div>
        <Waiting what="The enquiry is being fetched." />
      </div>
    </section>
  );
}

/** A chart with its table. */
export function ChartBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-charts">
      <h2 id="blocks-charts">Charts</h2>
      <div className="columns">
        <IncomeChart income={{ months: MONTHS, others: 0 }} currency="EUR" today="2026-04-10" />
      </div>
    </section>
  );
}
