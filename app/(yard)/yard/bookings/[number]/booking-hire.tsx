import { ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import type { BookingView } from '#lib/services/yard/open-booking.ts';
import styles from './booking.module.css';

/** The hire so far, line by line with how each came about, beside what was quoted. */
export function BookingHire({ view }: { readonly view: BookingView }) {
  const { hire } = view;
  if (hire === null) return null;
  const { currency } = hire;
  return (
    <section className="card" aria-label="Hire so far">
      <h2>Hire so far</h2>
      <p>
        It comes to{' '}
        <strong>
          <ShownMoney minor={hire.charged_minor} currency={currency} />
        </strong>
        ; <ShownMoney minor={hire.quoted_minor} currency={currency} /> of hire was quoted. The charge ends with the{' '}
        {hire.chargeEnds}.
        {hire.more_net_minor !== 0 && (
          <>
            {' '}
            With the waiver on it that is <ShownMoney minor={hire.more_net_minor} currency={currency} /> net,{' '}
            <ShownMoney minor={hire.more_gross_minor} currency={currency} /> with tax,{' '}
            {hire.more_net_minor > 0 ? 'more' : 'less'} than the quote.
          </>
        )}
      </p>
      <details>
        <summary>Each line and how it came about</summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keyboard */}
        <div className={styles.wide} tabIndex={0} role="region" aria-label="Lines of the hire">
          <table>
            <thead>
              <tr>
                <th scope="col">Equipment</th>
                <th scope="col">Days</th>
                <th scope="col" className={styles.money}>
                  Quoted
                </th>
                <th scope="col" className={styles.money}>
                  Now
                </th>
              </tr>
            </thead>
            <tbody>
              {hire.lines.map((line) => (
                <tr key={`${line.model} ${line.sentence}`}>
                  <th scope="row">
                    {line.count} × {line.name}
                    <small className="beside">{line.serials.join(', ')}</small>
                    <small className={`beside ${styles.why}`}>{line.sentence}</small>
                  </th>
                  <td>{line.days}</td>
                  <td className={styles.money}>
                    <ShownMoney minor={line.quoted_minor} currency={currency} />
                  </td>
                  <td className={styles.money}>
                    <ShownMoney minor={line.charged_minor} currency={currency} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </section>
  );
}
