import Link from 'next/link';
import type { BayInFull } from '#lib/services/stock/open-bays.ts';
import { UnitState } from '../../../_blocks/unit-state.tsx';
import { BayActs } from './bay-acts.client.tsx';
import { standing } from './bay-rows.tsx';

interface BayOpenProps {
  readonly bay: BayInFull;
  readonly depot: string;
  readonly mayChange: boolean;
}

/** One bay: what stands in it, and what can be done with it. */
export function BayOpen({ bay, depot, mayChange }: BayOpenProps) {
  return (
    <section className="panel" aria-labelledby="bay">
      <div className="heading">
        <h2 id="bay">
          {depot} {bay.code}
        </h2>
        <small>
          {standing(bay)} ·{' '}
          <a href={`/api/v1/labels?kind=bay&depot=${depot}&bay=${bay.code}`}>Label of the bay to print</a>
          {bay.units === 0 ? null : (
            <>
              {' '}
              · <a href={`/api/v1/labels?kind=unit&depot=${depot}&bay=${bay.code}`}>labels of its units</a>
            </>
          )}
        </small>
      </div>
      {mayChange ? <BayActs bay={bay} depot={depot} /> : null}
      {bay.stands.length + bay.counted.length === 0 ? (
        <p className="soft">Nothing stands here.</p>
      ) : (
        <details open={bay.stands.length + bay.counted.length <= 20}>
          <summary>What stands here</summary>
          <ul className="yard-rows">
            {bay.counted.map(({ model, name, count }) => (
              <li key={model}>
                <Link className="tag" href="/yard/stock?kind=counted">
                  {model}
                </Link>
                <div style={{ flex: '1 1 12em', minWidth: 0 }}>{name}</div>
                <span className="soft">{count} counted</span>
              </li>
            ))}
            {bay.stands.map(({ serial, name, state }) => (
              <li key={serial}>
                <Link className="tag" href={`/yard/stock/${serial}`}>
                  {serial}
                </Link>
                <div style={{ flex: '1 1 12em', minWidth: 0 }}>{name}</div>
                <UnitState state={state} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
