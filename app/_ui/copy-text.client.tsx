'use client';

import { useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';

interface CopyTextProps {
  readonly href: string;
  /** What is copied, e.g. `the words for a mail`. */
  readonly what: string;
}

/** Puts a text of the house into the clipboard; where the browser does not allow it, says how else to get it. */
export function CopyText({ href, what }: CopyTextProps) {
  const [said, setSaid] = useState('');
  async function copy() {
    setSaid('');
    try {
      const answer = await fetch(href);
      if (!answer.ok) throw new Error('not there');
      await navigator.clipboard.writeText(await answer.text());
      setSaid('Copied.');
    } catch {
      setSaid('Could not copy: open the link beside and copy from there.');
    }
  }
  return (
    <span>
      <button type="button" aria-label={`Copy ${what}`} onClick={copy}>
        Copy
      </button>{' '}
      <span role="status" className={styles.soft}>
        {said}
      </span>
    </span>
  );
}
