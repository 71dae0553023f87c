import Link from 'next/link';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { WalkCrate, WalkView } from '#lib/services/yard/picking/open-walk.ts';

/** The crates to have with one, a booking each: how far each is, and where its chains are tried and tested. */
export function WalkCrates({ view: { crates } }: { readonly view: WalkView }) {
  if (crates.length === 0) return null;
  return (
    <section className="card" aria-label="Crates">
      <h2>
        Crates <span className="soft">{crates.length}</span>
      </h2>
      <ul className="yard-rows">
        {crates.map((crate) => (
          <CrateRow key={crate.booking} crate={crate} />
        ))}
      </ul>
    </section>
  );
}

function CrateRow({ crate }: { readonly crate: WalkCrate }) {
  const { booking, customer, title, state, startsOn, isLate, pieces, picked } = crate;
  return (
    <li>
      <Link className="tag" href={`/yard/bookings/${booking}`}>
        {booking}
      </Link>
      <div className="what">
        {customer === '' ? 'No customer' : customer}
        {title !== '' && <small className="beside">{title}</small>}
      </div>
      {isLate && (
        <span className="mark warning">
          was to leave <ShownDate on={startsOn} />
        </span>
      )}
      {state === 'held' ? (
        <span className="mark warning">only held: not on the walk</span>
      ) : (
        <>
          <span className={pieces > 0 && picked === pieces ? 'mark good' : 'mark'}>
            {picked} of {pieces} here
          </span>
          <Link className="button no-print" href={`/yard/pick/${booking}`}>
            Try and test<span className="unseen"> {booking}</span>
          </Link>
        </>
      )}
    </li>
  );
}
