import Link from 'next/link';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { StateMark } from '#app/_ui/state-mark.tsx';
import { type CustomerView, openCustomer } from '#lib/services/customers/open-customer.ts';

export const dynamic = 'force-dynamic';

const SHOWN = 5;

export default async function CustomerPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const opened = openCustomer(await asking(), idOf((await params).id));
  if (!opened.ok) notFound();
  const customer = opened.value;
  const { id, log } = customer;
  return (
    <>
      <div className="cards">
        <Address customer={customer} />
        <Terms customer={customer} />
        <People customer={customer} />
        <Places customer={customer} />
        <section className="card" aria-labelledby="rules">
          <h2 id="rules">
            <Link href={`/customers/${id}/rules`}>Rules</Link>
          </h2>
          {customer.facts.house_rules.length === 0 ? (
            <p className="soft">None of their own; the house’s rules hold.</p>
          ) : (
            <ul>
              {customer.facts.house_rules.map((rule) => (
                <li key={rule.id}>
                  {rule.sentence} {rule.off === true && <small>switched off</small>}
                </li>
              ))}
            </ul>
          )}
        </section>
        <Newest customer={customer} />
      </div>
      <details className="panel" style={{ marginTop: 'var(--space-4)' }}>
        <summary>Who did what ({log.length})</summary>
        <ul>
          {log.map((entry) => (
            <li key={`${entry.at} ${entry.action}`}>
              <ShownMoment at={entry.at} /> · {entry.who} · {entry.action}
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Address({ customer: { id, facts } }: { readonly customer: CustomerView }) {
  const lines = [...facts.address, facts.contact, facts.email, facts.telephone].filter((line) => line !== '');
  return (
    <section className="card" aria-labelledby="address">
      <h2 id="address">
        <Link href={`/customers/${id}/edit`}>Address</Link>
      </h2>
      {lines.length === 0 ? (
        <p className="soft">Only the name is known. Papers need an address.</p>
      ) : (
        lines.map((line) => <div key={line}>{line}</div>)
      )}
    </section>
  );
}

function Terms({ customer: { id, facts, bands } }: { readonly customer: CustomerView }) {
  const band = bands.find((one) => one.id === facts.delivery_band)?.name;
  const rows: readonly (readonly [string, string])[] = [
    ['Account', facts.account === 'credit' ? 'credit' : 'new: pays a deposit'],
    ['Days to pay', facts.payment_days === null ? 'as the house has it' : String(facts.payment_days)],
    ['Delivery', band ?? 'no band agreed'],
    ['Discount', facts.discount_percent === null ? 'none agreed' : `${facts.discount_percent} %`],
    ['Purchase order', facts.order_number],
    ['Units', facts.units === null ? 'as the house has it' : facts.units === 'us' ? 'US customary' : 'SI'],
  ];
  return (
    <section className="card" aria-labelledby="terms">
      <h2 id="terms">
        <Link href={`/customers/${id}/edit`}>Terms</Link>
      </h2>
      <dl>
        {rows.map(([term, words]) => (
          <div key={term} style={{ display: 'contents' }}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function People({ customer }: { readonly customer: CustomerView }) {
  const people = customer.contacts.filter(({ archived }) => archived === 'no');
  return (
    <section className="card" aria-labelledby="contacts">
      <h2 id="contacts">
        <Link href={`/customers/${customer.id}/contacts`}>Contacts</Link> <small>{people.length}</small>
      </h2>
      {people.length === 0 && <p className="soft">Nobody is named yet.</p>}
      {people.slice(0, SHOWN).map((person) => (
        <p key={person.id}>
          {person.name}{' '}
          <small className="beside">
            {[person.position, person.telephone, person.email].filter((part) => part !== '').join(' · ')}
          </small>
        </p>
      ))}
    </section>
  );
}

function Places({ customer }: { readonly customer: CustomerView }) {
  const places = customer.sites.filter(({ archived }) => archived === 'no');
  return (
    <section className="card" aria-labelledby="sites">
      <h2 id="sites">
        <Link href={`/customers/${customer.id}/sites`}>Sites</Link> <small>{places.length}</small>
      </h2>
      {places.length === 0 && <p className="soft">A site keeps what holds at a place, for every enquiry there.</p>}
      {places.slice(0, SHOWN).map((place) => (
        <p key={place.id}>
          <Link href={`/customers/${customer.id}/sites/${place.id}`}>{place.name}</Link>{' '}
          <small>
            {place.enquiries} {place.enquiries === 1 ? 'enquiry' : 'enquiries'}
          </small>
        </p>
      ))}
    </section>
  );
}

function Newest({ customer }: { readonly customer: CustomerView }) {
  const { rows, total } = customer.enquiries;
  return (
    <section className="card" aria-labelledby="enquiries">
      <h2 id="enquiries">
        <Link href={`/customers/${customer.id}/dealings`}>Enquiries</Link> <small>{total}</small>
      </h2>
      {rows.length === 0 && <p className="soft">They have not asked for anything yet.</p>}
      {rows.slice(0, SHOWN).map((row) => (
        <p key={row.id}>
          <Link href={`/enquiries/${row.id}`}>{row.number}</Link> {row.title} <StateMark state={row.state} />
        </p>
      ))}
      <Link className="button" href={`/enquiries/new?customer=${customer.id}`}>
        New enquiry
      </Link>
    </section>
  );
}
