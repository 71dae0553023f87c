import { ShownSentence, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { Reason } from '#lib/kits/why/reason.ts';
import styles from './reason-tree.module.css';

const KINDS = { answer: '', rule: 'rule', fact: 'fact', part: 'part' } as const;

/** An explanation as nested lists that open and close; what has nothing below it is plain text. */
export function ReasonTree({ reasons, label }: { readonly reasons: Reason; readonly label: string }) {
  return (
    <section className={styles.tree} aria-label={label}>
      <p className={styles.answer}>
        <ShownSentence told={reasons} />
      </p>
      <Branches reasons={reasons.children} />
    </section>
  );
}

function Branches({ reasons }: { readonly reasons: readonly Reason[] }) {
  if (reasons.length === 0) return null;
  return (
    <ul className={styles.branches}>
      {reasons.map((reason) => (
        <li key={`${reason.kind} ${reason.sentence}`}>
          {reason.children.length === 0 ? (
            <p className={styles.leaf}>
              <Node reason={reason} />
            </p>
          ) : (
            <details open>
              <summary>
                <Node reason={reason} />
              </summary>
              <Branches reasons={reason.children} />
            </details>
          )}
        </li>
      ))}
    </ul>
  );
}

function Node({ reason }: { readonly reason: Reason }) {
  const { kind, source } = reason;
  return (
    <>
      <span className={styles[kind]}>{KINDS[kind]}</span> <ShownSentence told={reason} />{' '}
      {source === undefined ? null : (
        <span className={styles.source}>
          (<ShownSource source={source} />)
        </span>
      )}
    </>
  );
}
