import Link from 'next/link';
import { ShownMoment, ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import type { BookingPaper, BookingPapersView, ChargesStanding } from '#lib/services/yard/booking-papers.ts';
import styles from './booking.module.css';

interface PapersProps {
  readonly number: string;
  readonly view: BookingPapersView;
}

/** Every paper of the booking in one block: for the crew, the load and the customer, then what came of the return. */
export function BookingPapers({ number, view }: PapersProps) {
  return (
    <section className="card" aria-label="Papers">
      <h2>Papers</h2>
      <div className={styles.papers}>
        {view.groups.map(({ whom, papers }) => (
          <div key={whom}>
            <h3>{whom}</h3>
            <ul className="yard-rows">
              {papers.map((paper) => (
                <PaperRow key={paper.name} paper={paper} />
              ))}
            </ul>
          </div>
        ))}
        {view.charges.kind !== 'none' && (
          <div>
            <h3>Return</h3>
            <ul className="yard-rows">
              {view.notes.map((note) => (
                <li key={note.number}>
                  <a
                    className="tag"
                    href={`/api/v1/yard/notes/${note.number}`}
                    target="_blank"
                    rel="noreferrer"
                  >{`Return note ${note.number} (PDF)`}</a>
                  <span>
                    <span className="mark good">✓ approved</span>{' '}
                    <ShownMoney minor={note.grossMinor} currency={note.currency} />
                    <small className="beside">
                      <ShownMoment at={note.issuedAt} />
                    </small>
                  </span>
                </li>
              ))}
              <Standing number={number} charges={view.charges} />
            </ul>
          </div>
        )}
      </div>
    </section>
  );
}

function PaperRow({ paper: { name, href, form, about } }: { readonly paper: BookingPaper }) {
  return (
    <li>
      {href === null ? (
        <strong>{name}</strong>
      ) : (
        <a className="tag" href={href} target="_blank" rel="noreferrer">{`${name} (${form})`}</a>
      )}
      <small className="beside">{about}</small>
    </li>
  );
}

interface StandingProps {
  readonly number: string;
  readonly charges: ChargesStanding;
}

/** The return note that is still to come: not yet, waiting for the Desk, or only to be issued. */
function Standing({ number, charges }: StandingProps) {
  if (charges.kind === 'on notes' || charges.kind === 'none') return null;
  if (charges.kind === 'nothing back')
    return (
      <li>
        <strong>Return note</strong>
        <small className="beside">Not yet: nothing has come back.</small>
      </li>
    );
  const pieces = `${charges.pieces} ${charges.pieces === 1 ? 'piece' : 'pieces'} back`;
  return (
    <li>
      <Link className="tag" href={`/yard/charges/${number}`}>
        Charges and return note
      </Link>
      {charges.kind === 'to decide' ? (
        <span>
          <span className="mark warning">draft</span> {pieces}, {charges.waiting}{' '}
          {charges.waiting === 1 ? 'charge waits' : 'charges wait'} for the Desk
        </span>
      ) : (
        <span>
          <span className="mark">draft</span> {pieces}, all decided:{' '}
          <ShownMoney minor={charges.grossMinor} currency={charges.currency} />, to be issued
        </span>
      )}
    </li>
  );
}
