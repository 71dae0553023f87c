import styles from './moves.module.css';
import type { Said } from './use-deed.client.tsx';

/** How the last thing went: a sign, colour and words, read aloud; there from the start so that it is heard. */
export function SaidLine({ said }: { readonly said: Said | null }) {
  return (
    <p className={said === null ? styles.silent : styles[said.kind]} role={said?.kind === 'bad' ? 'alert' : 'status'}>
      {said === null ? '' : `${said.kind === 'good' ? '✓' : '✗'} ${said.words}`}
    </p>
  );
}
