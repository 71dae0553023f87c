import styles from '#app/_ui/plan/plan-sheet.module.css';
import { dateText } from '#lib/documents/words/print-values.ts';
import type { Brought, DepotsView } from '#lib/services/plans/depots-view.ts';
import { StartLater } from './start-later.client.tsx';

interface DepotsProps {
  readonly enquiry: {
    readonly id: number;
    readonly version: number;
    readonly siteJson: Readonly<Record<string, unknown>>;
  };
  readonly depots: DepotsView;
  readonly names: Readonly<Record<string, string>>;
  /** What the plan would lose without the other depots, where that was worked out. */
  readonly alone: string;
}

/** What must be brought from other depots, and by when; nothing where the despatching one has it all. */
export function OtherDepots({ enquiry, depots, names, alone }: DepotsProps) {
  const { brought, despatching, later } = depots;
  if (brought.length === 0) return null;
  const late = brought.filter(({ isInTime }) => !isInTime).length;
  const isOne = brought.length === 1 && brought[0]?.count === 1;
  const all = isOne ? 'it' : 'them';
  const these = isOne ? 'this part' : 'these parts';
  return (
    <section className={styles.panel} aria-labelledby="depots">
      <h2 id="depots">From other depots</h2>
      <p className={styles.lead}>
        {despatching} sends this hire out and has not all of it free on these dates. The rest is brought there first.
      </p>
      <ul className={styles.list}>
        {brought.map((one) => (
          <li key={`${one.model} ${one.depot}`}>{tellBrought(one, names)}</li>
        ))}
      </ul>
      {late === 0 ? null : (
        <p className={styles.notice}>
          The day to send {late === brought.length ? all : 'some of them'} has passed.{' '}
          {later === null
            ? `Within a year there is no later start on which all of it is free: leave ${these} out above and plan again.`
            : `Begin later as below, or leave ${these} out above and plan again.`}
        </p>
      )}
      {later === null ? null : (
        <StartLater
          id={enquiry.id}
          version={enquiry.version}
          siteJson={enquiry.siteJson}
          startsOn={later.startsOn}
          on={dateText(later.startsOn)}
          sentence={tellLater(later, names)}
        />
      )}
      {alone === '' ? null : (
        <p className={styles.told}>
          <strong>{alone.replace('Without it', `From ${despatching} alone`)}</strong>
        </p>
      )}
    </section>
  );
}

function tellBrought({ count, model, depotName, sendOn, isInTime }: Brought, names: DepotsProps['names']): string {
  const when = isInTime ? `send by ${dateText(sendOn)}` : `was to be sent by ${dateText(sendOn)}`;
  return `${count} × ${names[model] ?? ''} ${model} from ${depotName}: ${when}.`;
}

/** From when, what is sent then, what it costs and what that rests on. */
function tellLater(
  { startsOn, daysLater, brought, rates }: NonNullable<DepotsView['later']>,
  names: DepotsProps['names'],
): string {
  const days = daysLater === 1 ? '1 day later' : `${daysLater} days later`;
  const sent =
    brought.length === 0
      ? 'the despatching depot has all of it free by then'
      : `all of it is free, with ${brought.map((one) => tellBrought(one, names).replace(/\.$/, '')).join('; ')}`;
  const cost =
    rates === 'the same' ? 'The rates of hire are the same on that day' : 'Other rates of hire hold on that day';
  return `If the hire began on ${dateText(startsOn)}, ${days}, ${sent}. ${cost}; the house keeps no charge for carriage between its depots. By the bookings, holds and checks known today; a piece is loaded the day before it is used (common practice, no source).`;
}
