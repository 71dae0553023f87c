import Link from 'next/link';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { StateMark } from '#app/_ui/state-mark.tsx';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';
import type { EnquiryLifeView } from '#lib/services/enquiries/open-enquiry-life.ts';
import styles from './enquiry-header.module.css';
import { LifeFields } from './life-fields.client.tsx';
import { StateSteps } from './state-steps.client.tsx';

interface EnquiryHeaderProps {
  readonly enquiry: EnquiryView;
  readonly life: EnquiryLifeView;
}

/** What an enquiry is, where it stands, whose work it is and until when; each of these is changed right here. */
export function EnquiryHeader({ enquiry, life }: EnquiryHeaderProps) {
  const { number, title, customer, site } = enquiry;
  const isLate =
    life.due_on !== null && life.due_on < life.today && (life.state === 'new' || life.state === 'being worked');
  return (
    <>
      <div className="heading">
        <h1>
          {number} · {title}
        </h1>
        <small>
          <Link href={`/customers/${customer.id}`}>{customer.name}</Link> · {site.crews}{' '}
          {site.crews === 1 ? 'crew' : 'crews'}, {site.days} {site.days === 1 ? 'day' : 'days'} from{' '}
          <ShownDate on={site.startsOn} />
        </small>
      </div>
      <div className={styles.life}>
        <StateMark state={life.state} />
        {isLate && <span className={styles.late}>late</span>}
        <StateSteps enquiryId={life.id} state={life.state} steps={life.steps} />
        <LifeFields life={life} />
      </div>
    </>
  );
}
