import styles from '#app/_ui/plan/plan-sheet.module.css';
import { dateText } from '#lib/documents/words/print-values.ts';
import type { Brought, DepotsView } from '#lib/services/plans/depots-view.ts';

interface DepotsProps {
  readonly depots: DepotsView;
  readonly names: Readonly<Record<string, string>>;
  /** What the plan would lose without the other depots, where that was worked out. */
  readonly alone: string;
}

/** What must be brought from other depots, and by when; nothing where the despatching one has it all. */
export function OtherDepots({ depots, names, alone }: DepotsProps) {
  const { brought, despatching } = depots;
  if (brought.length === 0) return null;
  const late = brought.filter(({ isInTime }) => !isInTime).length;
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
          The day to send {late === brought.length ? 'them' : 'some of them'} has passed. Agree on a later start, or
          leave these parts out above and plan again.
        </p>
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
