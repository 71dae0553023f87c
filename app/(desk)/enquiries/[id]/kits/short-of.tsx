import Link from 'next/link';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { ShortageAnswer, ShortModel } from '#lib/services/stock/shortage-answer.ts';

/** What the dates lack and what the house can do about it: who could wait, and what could stand in. */
export function ShortOf({ answer }: { readonly answer: ShortageAnswer }) {
  const { short } = answer;
  if (short.length === 0) return null;
  return (
    <section className={styles.panel} aria-labelledby="short">
      <h2 id="short">Short on these dates</h2>
      {short.map((model) => (
        <ShortOne key={model.model} short={model} />
      ))}
    </section>
  );
}

function ShortOne({ short }: { readonly short: ShortModel }) {
  const { model, name, sentence, waiters, standIns } = short;
  return (
    <div className="notice warning">
      <h3>
        {name} ({model})
      </h3>
      <p>
        {sentence} <Link href={`/yard/availability/${model}`}>See its days</Link>
      </p>
      <dl>
        <dt>Could wait</dt>
        <dd>
          {waiters.length === 0
            ? 'No booking that has not left could begin later and find its pieces then.'
            : waiters.map((waiter) => (
                <span key={waiter.number} className="beside">
                  Booking {waiter.number}
                  {waiter.customer === '' ? '' : ` of ${waiter.customer}`} would free {waiter.frees} if it began on{' '}
                  <ShownDate on={waiter.couldStartOn} /> and not on <ShownDate on={waiter.startsOn} />.
                </span>
              ))}
        </dd>
        <dt>Could stand in</dt>
        <dd>
          {standIns.length === 0
            ? 'No other model that is free passes the rules on every line that uses it.'
            : standIns.map((other) => `${other.model} ${other.name} (${other.free} free)`).join('; ')}
        </dd>
      </dl>
    </div>
  );
}
