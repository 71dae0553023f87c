import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate, ShownMoment, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import { openUnit, type UnitDetail } from '#lib/services/stock/open-unit.ts';
import { UnitState } from '../../../_blocks/unit-state.tsx';
import { UnitActs } from './unit-acts.client.tsx';

export const dynamic = 'force-dynamic';

interface UnitPageProps {
  readonly params: Promise<{ readonly serial: string }>;
}

export async function generateMetadata({ params }: UnitPageProps): Promise<Metadata> {
  return { title: `Unit ${decodeURIComponent((await params).serial)}` };
}

export default async function UnitPage({ params }: UnitPageProps) {
  const found = openUnit(await asking(), decodeURIComponent((await params).serial));
  if (!found.ok) {
    return (
      <>
        <h1>Unit</h1>
        <p className="notice refusal">{found.reason.sentence}</p>
        <Link className="button" href="/yard/stock">
          To the stock
        </Link>
      </>
    );
  }
  const detail = found.value;
  const { unit, model } = detail;
  return (
    <>
      <p>
        <Link href="/yard/stock">Stock</Link>
      </p>
      <div className="heading">
        <h1>{unit.serial}</h1>
        <UnitState state={unit.state} />
      </div>
      <p>
        <Link href={`/equipment/${model.number}`}>
          {model.number} {model.name}
        </Link>{' '}
        · <Link href={`/yard/stock?model=${model.number}`}>all units of this model</Link> ·{' '}
        <a href={`/api/v1/labels?kind=unit&serial=${unit.serial}`}>Label to print</a>
      </p>
      <LostOnHire detail={detail} />
      <div className="columns">
        <UnitFacts detail={detail} />
        <Engagements detail={detail} />
      </div>
      {detail.mayChange && (
        <UnitActs
          serial={unit.serial}
          depot={unit.depot}
          bay={unit.bay}
          state={unit.state}
          runHours={unit.run_hours}
          note={unit.note}
          today={detail.today}
          bays={detail.bays.filter(({ depot }) => depot === unit.depot).map(({ code }) => code)}
        />
      )}
      <History detail={detail} />
    </>
  );
}

/** What was lost on a hire comes in through its booking, so that what was charged for it is given back. */
function LostOnHire({ detail: { unit, history } }: { readonly detail: UnitDetail }) {
  const missing = unit.state === 'lost' ? history.find(({ kind }) => kind === 'missing') : undefined;
  if (missing === undefined) return null;
  return (
    <p className="notice">
      It was lost with booking {missing.reference}. If it has been found,{' '}
      <Link href={`/yard/back/${missing.reference}`}>check it in there</Link>: what was charged for it is then given
      back.
    </p>
  );
}

function UnitFacts({ detail: { unit, transfer, today } }: { readonly detail: UnitDetail }) {
  return (
    <section className="panel" aria-label="On record">
      <h2>On record</h2>
      <dl>
        <dt>Stands</dt>
        <dd>
          {transfer === null ? (
            `${unit.depot} ${unit.bay}`
          ) : (
            <>
              on its way to {transfer.to} with <Link href="/yard/transfers">{transfer.number}</Link>, due{' '}
              <ShownDate on={transfer.dueOn} />
            </>
          )}
        </dd>
        <Certificate kind="Inspection" done={unit.inspection_done_on} due={unit.inspection_due_on} today={today} />
        <Certificate kind="Calibration" done={unit.calibration_done_on} due={unit.calibration_due_on} today={today} />
        <dt>Has run</dt>
        <dd>{unit.run_hours} h</dd>
        <dt>Note</dt>
        <dd>{unit.note === '' ? 'none' : unit.note}</dd>
      </dl>
    </section>
  );
}

interface CertificateProps {
  readonly kind: string;
  readonly done: string | null;
  readonly due: string | null;
  readonly today: string;
}

function Certificate({ kind, done, due, today }: CertificateProps) {
  if (due === null) return null;
  return (
    <>
      <dt>{kind}</dt>
      <dd>
        {done === null ? '' : <ShownDate on={done} />}
        {done === null ? '' : ', '}next due <ShownDate on={due} />{' '}
        {due <= today && <span className="mark refusal">overdue</span>}
      </dd>
    </>
  );
}

function Engagements({ detail: { engagements } }: { readonly detail: UnitDetail }) {
  return (
    <section className="panel" aria-label="Booked">
      <h2>Booked</h2>
      {engagements.length === 0 ? (
        <p className="soft">No booking holds it.</p>
      ) : (
        <ul className="findings">
          {engagements.map((row) => (
            <li key={`${row.booking} ${row.startsOn}`}>
              <Link className="tag" href={`/yard/bookings/${row.booking}`}>
                {row.booking}
              </Link>{' '}
              {row.customer ?? 'no customer'} <span className="mark">{row.state}</span>
              <small className="beside">
                <ShownWindow days={{ starts_on: row.startsOn, ends_before: row.endsBefore }} />
              </small>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function History({ detail: { history } }: { readonly detail: UnitDetail }) {
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      <div className="wide">
        <table>
          <thead>
            <tr>
              <th scope="col">When (UTC)</th>
              <th scope="col">What</th>
              <th scope="col" className="wide-only">
                Why
              </th>
              <th scope="col">Who</th>
            </tr>
          </thead>
          <tbody>
            {history.map((event) => (
              <tr key={event.id}>
                <td>
                  <ShownMoment at={event.at} />
                </td>
                <td>
                  <strong>{event.kind}</strong> {change(event)}
                  <small className="narrow-only">{event.reason}</small>
                </td>
                <td className="wide-only">
                  {event.reason} {event.reference}
                </td>
                <td>{event.who}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function change({ kind, before, after }: UnitDetail['history'][number]): string {
  if (kind === 'inspection' || kind === 'calibration') return `on ${before}, next ${after}`;
  if (before === '' || after === '') return `${before}${after}`;
  return `${before} → ${after}`;
}
