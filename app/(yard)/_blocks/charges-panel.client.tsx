'use client';

import { ShownMoment, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import type { ChargesView } from '#lib/services/yard/back/open-charges.ts';
import { ChargeRow } from './charge-row.client.tsx';
import styles from './moves.module.css';
import { SaidLine } from './said.tsx';
import { useDeed } from './use-deed.client.tsx';

/** The Desk's word on each charge of a return, then the note; the yard sees it and decides nothing. */
export function ChargesPanel({ view }: { readonly view: ChargesView }) {
  const { busy, said, run } = useDeed();
  const waiting = view.charges.filter(({ word }) => word === null).length;
  return (
    <section className="panel" aria-label="Charges of the return">
      <h2>
        {view.pieces === 0
          ? 'Nothing came back since the last note'
          : `${view.charges.length} ${view.charges.length === 1 ? 'charge' : 'charges'} for ${view.pieces} ${view.pieces === 1 ? 'piece' : 'pieces'}${waiting === 0 ? '' : `, ${waiting} to decide`}`}
      </h2>
      <p className="soft">
        Damage waiver: {view.waiver}. Worked out by the terms of the quote, checked a second time, rounded once a line,
        tax once a category.
        {view.exchange === null
          ? ''
          : ` In ${view.exchange.to}, at the rate of the quote: 1 ${view.exchange.from} is ${view.exchange.rate} ${view.exchange.to}. Parts are written down in ${view.exchange.from}.`}
      </p>
      {view.charges.map((charge) => (
        <ChargeRow
          key={`${charge.key} ${charge.proposedMinor} ${charge.word?.decision ?? ''}`}
          charge={charge}
          number={view.number}
          currency={view.currency}
          leavesOut={view.leavesOut}
          mayDecide={view.mayDecide}
        />
      ))}
      {view.pieces > 0 && view.charges.length === 0 ? <p>Nothing is charged beyond the quote.</p> : null}
      {view.pieces === 0 || view.total === null ? null : (
        <dl>
          <dt>Net</dt>
          <dd className={styles.money}>
            <ShownMoney minor={view.total.net} currency={view.currency} />
          </dd>
          <dt>Tax</dt>
          <dd className={styles.money}>
            <ShownMoney minor={view.total.tax} currency={view.currency} />
          </dd>
          <dt className={styles.total}>Note comes to</dt>
          <dd className={`${styles.money} ${styles.total}`}>
            <ShownMoney minor={view.total.gross} currency={view.currency} />
          </dd>
        </dl>
      )}
      {view.pieces === 0 ? null : (
        <p className="tools">
          <button
            type="button"
            className="main"
            disabled={busy || !view.mayDecide || view.total === null}
            onClick={() =>
              run<{ readonly number: string; readonly isClosed: boolean }>({
                path: `/api/v1/yard/bookings/${view.number}/notes`,
                words: ({ number, isClosed }) =>
                  `Return note ${number} is issued${isClosed ? ' and the booking is closed' : ''}.`,
              })
            }
          >
            {view.closes ? 'Issue the note and close the booking' : 'Issue the return note'}
          </button>
          {view.mayDecide ? null : <span className="soft">The Desk decides charges and issues the note.</span>}
        </p>
      )}
      <SaidLine said={said} />
      <Notes notes={view.notes} />
    </section>
  );
}

function Notes({ notes }: Pick<ChargesView, 'notes'>) {
  if (notes.length === 0) return null;
  return (
    <>
      <h3>Return notes</h3>
      <ul className={styles.list}>
        {notes.map((note) => (
          <li key={note.number}>
            <div className={styles.what}>
              <a href={`/api/v1/yard/notes/${note.number}`} target="_blank" rel="noreferrer">
                Return note {note.number} (PDF)
              </a>
              <small className="beside">
                <ShownMoment at={note.issuedAt} />, {note.who}
              </small>
            </div>
            <span className={styles.money}>
              <ShownMoney minor={note.grossMinor} currency={note.currency} />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
