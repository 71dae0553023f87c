import Link from 'next/link';

/** The home page of a house that has no enquiry yet: the way from a list to a quote, in its three steps. */
export function HomeStart() {
  return (
    <section className="panel" aria-labelledby="start">
      <h2 id="start">A new house starts here</h2>
      <ol>
        <li>
          <strong>Open an enquiry</strong> for a customer and say where the valves are and when they are to be moved.
        </li>
        <li>
          <strong>Take in the valve list</strong> as it came: a spreadsheet, a text file, or lines pasted into the
          schedule. What is missing widens a range; nothing is refused for it.
        </li>
        <li>
          <strong>Plan the kits</strong>, look at the price, and issue the quote with its papers.
        </li>
      </ol>
      <p>From then on this page shows what is due, what lapses, what is short and what has not come back.</p>
      <Link className="button main" href="/enquiries/new">
        New enquiry
      </Link>{' '}
      <Link className="button" href="/equipment">
        See the equipment
      </Link>
    </section>
  );
}
