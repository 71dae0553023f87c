import Link from 'next/link';
import type { UnitsAsked, UnitsFound } from '#lib/services/stock/find-units.ts';

interface UnitFiltersProps {
  readonly asked: UnitsAsked;
  readonly found: UnitsFound;
}

/** Filters of the stock; they stand in the address, so that a list can be kept and sent. */
export function UnitFilters({ asked, found }: UnitFiltersProps) {
  const isFiltered = Object.entries(asked).some(([key, value]) => key !== 'page' && value !== '');
  return (
    <form className="panel" action="/yard/stock" method="get" role="search" aria-label="Units">
      <div className="fields">
        <div>
          <label htmlFor="q">Serial number or words</label>
          <input id="q" name="q" type="search" defaultValue={asked.words} autoComplete="off" />
        </div>
        <Choice name="role" label="Role" value={asked.role} choices={found.roles} />
        <Choice name="depot" label="Depot" value={asked.depot} choices={found.depots.map(({ code }) => code)} />
        <Choice name="state" label="State" value={asked.state} choices={found.states} />
        <div>
          <label htmlFor="due">Inspection or calibration</label>
          <select id="due" name="due" defaultValue={asked.due}>
            <option value="">any</option>
            <option value="overdue">overdue</option>
            <option value="month">due within a month</option>
          </select>
        </div>
        {asked.model !== '' && <input type="hidden" name="model" value={asked.model} />}
        {asked.bay !== '' && <input type="hidden" name="bay" value={asked.bay} />}
        <div className="tools" style={{ alignSelf: 'end', marginBottom: 0 }}>
          <button type="submit" className="main">
            Show
          </button>
          {isFiltered && (
            <Link className="button quiet" href="/yard/stock">
              Show all
            </Link>
          )}
        </div>
      </div>
      {(asked.model !== '' || asked.bay !== '') && (
        <p className="soft">
          {asked.model === '' ? '' : `Only model ${asked.model}. `}
          {asked.bay === '' ? '' : `Only bay ${asked.bay}.`}
        </p>
      )}
    </form>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly string[];
}

function Choice({ name, label, value, choices }: ChoiceProps) {
  return (
    <div>
      <label htmlFor={name}>{label}</label>
      <select id={name} name={name} defaultValue={choices.includes(value) ? value : ''}>
        <option value="">any</option>
        {choices.map((choice) => (
          <option key={choice}>{choice}</option>
        ))}
      </select>
    </div>
  );
}
