import { asking } from '#app/_lib/asking.ts';
import { openHouseFigures, USE_WINDOWS, type UseWindow } from '#lib/services/house/open-house-figures.ts';
import { IncomeChart } from './income-chart.tsx';
import { UseTable } from './use-table.tsx';

interface HomeFiguresProps {
  readonly days: UseWindow;
  readonly depot: string;
}

/** Charts of the house: hire income by month, and how much of the equipment is out. */
export async function HomeFigures({ days, depot }: HomeFiguresProps) {
  const figures = openHouseFigures(await asking(), { days, depot });
  if (!figures.ok) return <p className="notice refusal">{figures.reason.sentence}</p>;
  return (
    <div className="columns house-figures">
      <section className="panel" aria-labelledby="income">
        <h2 id="income">Hire income by month</h2>
        <IncomeChart income={figures.value.income} currency={figures.value.currency} today={figures.value.today} />
      </section>
      <section className="panel" aria-labelledby="use">
        <h2 id="use">Equipment out on hire</h2>
        <form className="tools" action="/">
          <div>
            <label htmlFor="use-days">Days looked at</label>
            <select id="use-days" name="days" defaultValue={days}>
              {USE_WINDOWS.map((count) => (
                <option key={count} value={count}>
                  {count} days round today
                </option>
              ))}
            </select>
          </div>
          <div>
            <label htmlFor="use-depot">Depot</label>
            <select id="use-depot" name="depot" defaultValue={depot}>
              <option value="">all depots</option>
              {figures.value.depots.map(({ code, name }) => (
                <option key={code} value={code}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <button type="submit">Show</button>
        </form>
        <UseTable figures={figures.value} />
      </section>
    </div>
  );
}
