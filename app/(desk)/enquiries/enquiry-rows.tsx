import Link from 'next/link';
import { enquiryAddress } from '#app/_lib/enquiry-list-address.ts';
import { ShownDate, ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { StateMark } from '#app/_ui/state-mark.tsx';
import type { EnquiriesAsked, EnquiriesFound } from '#lib/services/enquiries/find-enquiries.ts';
import styles from './enquiry-list.module.css';

const COLUMNS = [
  { order: 'number', label: 'Number', where: '' },
  { order: 'title', label: 'Title', where: '' },
  { order: 'customer', label: 'Customer', where: 'wide-only' },
  { order: 'state', label: 'State', where: '' },
  { order: 'assigned', label: 'Whose work', where: 'wide-only' },
  { order: 'due', label: 'Due', where: '' },
] as const;

interface RowsProps {
  readonly found: EnquiriesFound;
  /** The list’s own address; without it the columns are not put in order. */
  readonly asked: EnquiriesAsked | null;
}

export function EnquiryRows({ found, asked }: RowsProps) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            {COLUMNS.map(({ order, label, where }) => (
              <Heading key={order} order={order} label={label} where={where} asked={asked} />
            ))}
            <th className="number wide-only">Lines</th>
            <Heading order="changed" label="Changed" where="wide-only" asked={asked} />
          </tr>
        </thead>
        <tbody>
          {found.rows.map((row) => (
            <tr key={row.id}>
              <td className="tag">
                <Link href={`/enquiries/${row.id}`}>{row.number}</Link>
              </td>
              <td>
                {row.title}
                {row.reference !== '' && <small className="beside">{row.reference}</small>}
                <small className="narrow-only">{row.customer}</small>
              </td>
              <td className="wide-only">
                <Link href={`/customers/${row.customerId}`}>{row.customer}</Link>
              </td>
              <td>
                <StateMark state={row.state} />
                {row.self_service !== null && <small className="beside">self-service: {row.self_service}</small>}
              </td>
              <td className="wide-only">{row.assigned === '' ? <span className="soft">nobody</span> : row.assigned}</td>
              <td>
                <DueDay row={row} today={found.today} />
              </td>
              <td className="number wide-only">{row.lines}</td>
              <td className="wide-only">
                <ShownMoment at={row.updated_at} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function DueDay({ row, today }: { readonly row: EnquiriesFound['rows'][number]; readonly today: string }) {
  if (row.due_on === null) return null;
  const isLate = row.due_on < today && (row.state === 'new' || row.state === 'being worked');
  return isLate ? (
    <span className={styles.late}>
      late: <ShownDate on={row.due_on} />
    </span>
  ) : (
    <ShownDate on={row.due_on} />
  );
}

interface HeadingProps {
  readonly order: EnquiriesAsked['order'];
  readonly label: string;
  readonly where: string;
  readonly asked: EnquiriesAsked | null;
}

/** A heading that puts the list in its order, and turns it round the second time. */
function Heading({ order, label, where, asked }: HeadingProps) {
  if (asked === null) return <th className={where}>{label}</th>;
  const isOrder = asked.order === order;
  const first = order === 'changed' || order === 'number' ? 'down' : 'up';
  const way = isOrder ? (asked.way === 'up' ? 'down' : 'up') : first;
  return (
    <th className={where} aria-sort={isOrder ? (asked.way === 'up' ? 'ascending' : 'descending') : undefined}>
      <Link className={styles.sorted} href={enquiryAddress({ asked, change: { order, way } })}>
        {label}
        {isOrder && <span aria-hidden="true">{asked.way === 'up' ? ' ▴' : ' ▾'}</span>}
      </Link>
    </th>
  );
}
