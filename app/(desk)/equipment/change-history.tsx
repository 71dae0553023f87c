import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { ModelDetail } from '#lib/services/equipment/open-model.ts';
import styles from './equipment.module.css';

/** Who changed what and when, with the values before and after. */
export function ChangeHistory({ changes }: { readonly changes: ModelDetail['changes'] }) {
  if (changes.length === 0) return <p className="soft">Nothing since the house was set up.</p>;
  return (
    <ol className={styles.changes}>
      {changes.map((change) => (
        <li key={change.id}>
          <strong>{change.action}</strong>{' '}
          <span className="soft">
            <ShownMoment at={change.at} />, {change.who}
          </span>
          {change.differences.length === 0 ? null : (
            <ul>
              {change.differences.map(({ name, before, after }) => (
                <li key={name}>
                  {name}: {before === '' ? null : <span className={styles.gone}>{before}</span>}{' '}
                  {after === '' ? 'taken out' : after}
                </li>
              ))}
              {change.more > 0 ? <li>and {change.more} more values</li> : null}
            </ul>
          )}
        </li>
      ))}
    </ol>
  );
}
