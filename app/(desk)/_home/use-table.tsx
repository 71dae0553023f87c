import { ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import { countText } from '#lib/documents/words/print-values.ts';
import type { HouseFigures } from '#lib/services/house/open-house-figures.ts';

const SHOWN = 12;

/** How much of each model is out; the figures are the table itself, the bars only show them. */
export function UseTable({ figures }: { readonly figures: HouseFigures }) {
  const used = figures.use.filter(({ bookedDays }) => bookedDays > 0);
  const idle = figures.use.length - used.length;
  return (
    <>
      <p className="soft">
        <ShownWindow days={figures.window} />: {percent(figures.whole)} of all unit-days are booked. Turnaround is not
        counted.
      </p>
      {used.length === 0 ? (
        <p className="empty">No unit is booked in these days. Units are booked when a quote is accepted.</p>
      ) : (
        <div className="wide">
          <table className="use-table">
            <thead>
              <tr>
                <th>Model</th>
                <th className="number wide-only">Units</th>
                <th>Out</th>
                <th className="number">Share</th>
              </tr>
            </thead>
            <tbody>
              {used.slice(0, SHOWN).map((row) => (
                <tr key={row.model}>
                  <td>
                    <span className="tag">{row.model}</span> {row.name}
                  </td>
                  <td className="number wide-only">{row.units}</td>
                  <td className="chart">
                    <ShareBar share={row.share} />
                    <small>
                      {row.bookedDays} of {row.unitDays} days
                    </small>
                  </td>
                  <td className="number">{percent(row.share)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {used.length > SHOWN && <p className="soft">{countText(used.length - SHOWN, 'model')} more were used less.</p>}
      {used.length > 0 && idle > 0 && (
        <p className="soft">{countText(idle, 'model')} stood in the yard all the time.</p>
      )}
    </>
  );
}

function ShareBar({ share }: { readonly share: number }) {
  return (
    <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true" className="share">
      <rect className="trough" width="100" height="8" />
      <rect className="bar" width={Math.round(share * 1000) / 10} height="8" />
    </svg>
  );
}

function percent(share: number): string {
  return `${share > 0 && share < 0.1 ? (share * 100).toFixed(1) : Math.round(share * 100)} %`;
}
