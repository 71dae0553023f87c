import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { listHouseTransfers, type TransferView } from '#lib/services/stock/list-transfers.ts';
import { SendTransfer } from './send-transfer.client.tsx';
import { TakeIn } from './take-in.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Transfers' };

export default async function TransfersPage() {
  const view = listHouseTransfers(await asking());
  if (!view.ok) {
    return (
      <>
        <h1>Transfers</h1>
        <p className="notice refusal">{view.reason.sentence}</p>
      </>
    );
  }
  const { transfers, mayChange, bays, today } = view.value;
  const away = transfers.filter(({ state }) => state === 'on the way');
  const arrived = transfers.filter(({ state }) => state === 'arrived');
  return (
    <>
      <h1>Transfers between depots</h1>
      <div className="yard-cards">
        <section className={away.some(({ overdue }) => overdue) ? 'card asks' : 'card'} aria-label="On the way">
          <h2>
            On the way <span className="soft">{away.length === 0 ? 'none' : away.length}</span>
          </h2>
          {away.length === 0 && <p className="soft">Nothing is on its way between depots.</p>}
          {away.map((transfer) => (
            <section key={transfer.number} className="panel" aria-label={transfer.number}>
              <Head transfer={transfer} />
              {mayChange && (
                <TakeIn
                  transfer={transfer}
                  bays={bays.flatMap(({ depot, code }) => (depot === transfer.to_depot ? [code] : []))}
                />
              )}
            </section>
          ))}
        </section>
        {mayChange && <SendTransfer view={view.value} today={today} />}
        <section className="card" aria-label="Arrived">
          <h2>Arrived</h2>
          {arrived.length === 0 ? <p className="soft">None yet.</p> : null}
          {arrived.map((transfer) => (
            <details key={transfer.number}>
              <summary>
                {transfer.number}: {transfer.from_depot} to {transfer.to_depot}
              </summary>
              <Head transfer={transfer} />
            </details>
          ))}
        </section>
      </div>
    </>
  );
}

function Head({ transfer }: { readonly transfer: TransferView }) {
  return (
    <>
      <h3>
        {transfer.number}: {transfer.from_depot} to {transfer.to_depot}{' '}
        {transfer.overdue && <span className="mark warning">overdue</span>}
      </h3>
      <p>
        Sent <ShownDate on={transfer.sent_on} /> by {transfer.sent_by}, can be used from{' '}
        <ShownDate on={transfer.due_on} />
        {transfer.arrived_on === null ? (
          ''
        ) : (
          <>
            {' '}
            , arrived <ShownDate on={transfer.arrived_on} />
          </>
        )}
        .{transfer.note === '' ? '' : ` ${transfer.note}`}
      </p>
      <ul className="findings">
        {transfer.units.map(({ serial, name, active, lost }) => (
          <li key={serial}>
            <strong>{serial}</strong> {name}{' '}
            <span className="mark">{active ? 'on the way' : lost ? 'lost' : 'arrived'}</span>
          </li>
        ))}
        {transfer.items.map(({ model, name, count, arrived }) => (
          <li key={model}>
            <strong>
              {count} × {model}
            </strong>{' '}
            {name} <span className="mark">{arrived === null ? 'on the way' : `${arrived} arrived`}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
