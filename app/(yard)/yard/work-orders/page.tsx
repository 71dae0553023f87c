import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { listWorkOrders, type WorkOrderView } from '#lib/services/yard/work/list-work-orders.ts';
import styles from '../../_blocks/moves.module.css';
import { WorkNew } from './work-new.client.tsx';
import { WorkRow } from './work-row.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Work orders' };

export default async function WorkOrdersPage() {
  const orders = listWorkOrders(await asking());
  if (!orders.ok) {
    return (
      <>
        <h1>Work orders</h1>
        <p className="notice refusal">{orders.reason.sentence}</p>
      </>
    );
  }
  const { open, ended, mayDo, currency } = orders.value;
  return (
    <>
      <div className="heading">
        <h1>Work orders</h1>
        <small>
          {open.length} open{mayDo ? '' : ' · the yard does them'}
        </small>
      </div>
      <section className="panel" aria-label="Open work orders">
        {open.length === 0 ? <p>Nothing waits for the bench.</p> : null}
        <ul className={styles.list}>
          {open.map((order) => (
            <WorkRow key={`${order.number} ${order.state}`} order={order} mayDo={mayDo} currency={currency} />
          ))}
        </ul>
      </section>
      {mayDo ? <WorkNew /> : null}
      <Ended ended={ended} />
    </>
  );
}

function Ended({ ended }: { readonly ended: readonly WorkOrderView[] }) {
  if (ended.length === 0) return null;
  return (
    <section className="panel" aria-label="Ended work orders">
      <h2>Ended last</h2>
      <ul className={styles.list}>
        {ended.map((order) => (
          <li key={order.number}>
            <div className={styles.what}>
              <strong className="tag">{order.number}</strong> {order.kind} of {order.serial}
              <small className="beside">{order.done}</small>
            </div>
            <span className="soft">
              {order.result === '' ? order.state : order.result}
              {order.endedAt === null ? null : (
                <>
                  , {order.endedBy}, <ShownMoment at={order.endedAt} />
                </>
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
