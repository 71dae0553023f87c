import { wholeAmount } from '#app/_ui/plan/plan-words.ts';
import { ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { countText, dateText, moneyText } from '#lib/documents/words/print-values.ts';
import type { HouseFigures } from '#lib/services/house/open-house-figures.ts';

type Income = HouseFigures['income'];
type IncomeMonth = Income['months'][number];

interface IncomeChartProps {
  readonly income: Income;
  readonly currency: string;
  readonly today: string;
}

const BOX = { width: 420, height: 190, left: 8, top: 20, bottom: 24 } as const;

/** Bars by month; months that are still to come are drawn open. The same figures stand in a table beneath. */
export function IncomeChart({ income, currency, today }: IncomeChartProps) {
  const { months, others } = income;
  const most = Math.max(...months.map(({ net_minor }) => net_minor));
  if (most <= 0) {
    return (
      <p className="empty">
        No accepted quote has its hire in these months. A quote counts, without tax, in the month in which its hire
        starts.
      </p>
    );
  }
  const step = (BOX.width - BOX.left * 2) / months.length;
  const floor = BOX.height - BOX.bottom;
  return (
    <figure className="chart">
      <figcaption>
        Accepted quotes without tax, {currency}, in the month in which the hire starts; months to come are drawn open.
      </figcaption>
      <svg viewBox={`0 0 ${BOX.width} ${BOX.height}`} role="img" aria-label={told(months, currency)}>
        {months.map(({ month, net_minor }, index) => {
          const height = (net_minor / most) * (floor - BOX.top);
          const x = BOX.left + index * step;
          return (
            <g key={month}>
              <rect
                className={month > today.slice(0, 7) ? 'bar held' : 'bar'}
                x={x + step * 0.16}
                y={floor - height}
                width={step * 0.68}
                height={height}
              />
              {net_minor === most && (
                <text x={x + step / 2} y={floor - height - 6} textAnchor="middle">
                  {wholeAmount(net_minor, currency)}
                </text>
              )}
              <text className="faint" x={x + step / 2} y={BOX.height - 7} textAnchor="middle">
                {monthText(month).slice(0, 3)}
              </text>
            </g>
          );
        })}
        <line className="axis" x1={BOX.left} x2={BOX.width - BOX.left} y1={floor} y2={floor} />
      </svg>
      <IncomeTable months={months} currency={currency} />
      {others > 0 && <p className="soft">{countText(others, 'quote')} in other currencies are not added.</p>}
    </figure>
  );
}

function IncomeTable({ months, currency }: { readonly months: readonly IncomeMonth[]; readonly currency: string }) {
  return (
    <details>
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th>Month</th>
            <th className="number">Quotes</th>
            <th className="number">{currency}</th>
          </tr>
        </thead>
        <tbody>
          {months.map(({ month, quotes, net_minor }) => (
            <tr key={month}>
              <td>{monthText(month)}</td>
              <td className="number">{quotes}</td>
              <td className="number">
                <ShownMoney minor={net_minor} currency={currency} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function told(months: readonly IncomeMonth[], currency: string): string {
  const some = months.filter(({ net_minor }) => net_minor > 0);
  return `Hire income by month: ${some.map((row) => `${monthText(row.month)} ${moneyText(row.net_minor, currency)} ${currency}`).join(', ')}.`;
}

/** `March 2026` from `2026-03`. */
function monthText(month: string): string {
  return dateText(`${month}-01`).slice(2);
}
