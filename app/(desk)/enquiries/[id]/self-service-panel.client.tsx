'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { SelfOrderView } from '#lib/services/self-service/take-over.ts';
import { AskedByLink } from './asked-by-link.client.tsx';
import styles from './self-service-panel.module.css';

interface PanelProps {
  readonly enquiryId: number;
  readonly order: SelfOrderView;
}

const DEEDS = [
  { deed: 'take-over', words: 'Take over', help: 'You work on it; its owner may look and no longer change it.' },
  {
    deed: 'send-back',
    words: 'Send back',
    help: 'Its owner may go on, with the newest quote where there is one. A new link is shown here once; earlier links go on working.',
  },
  { deed: 'withdraw-links', words: 'Withdraw links', help: 'No link that was given out opens it any more.' },
] as const;
type Deed = (typeof DEEDS)[number]['deed'];

const STAGES: Readonly<Record<SelfOrderView['stage'], string>> = {
  draft: 'not sent yet',
  'handed over': 'handed over to the Desk',
  quoted: 'quoted without the Desk',
  accepted: 'ordered',
  cancelled: 'cancelled by its owner',
};

/** A draft whose owner is known was sent back, or its owner changes it after a quote. */
function stageWords({ stage, contact }: SelfOrderView): string {
  return stage === 'draft' && contact.email !== undefined ? 'its owner works on it' : STAGES[stage];
}

/** An enquiry that came by self-service: who, how far, why it is here, and what the Desk may do about it. */
export function SelfServicePanel({ enquiryId, order }: PanelProps) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [link, setLink] = useState('');
  const [isBusy, setBusy] = useState(false);
  async function act(deed: Deed) {
    setBusy(true);
    const sent = await send<{ readonly token?: string }>({
      method: 'POST',
      path: `/api/v1/enquiries/${enquiryId}/self-service`,
      body: { deed },
    });
    setBusy(false);
    setSaid(sent.ok ? DONE[deed] : sent.sentence);
    if (sent.ok && sent.value.token !== undefined) setLink(`${location.origin}/hire/${sent.value.token}`);
    router.refresh();
  }
  const offered = DEEDS.filter(({ deed }) => mayDo(order, deed));
  return (
    <section className={`card ${styles.panel}`} aria-label="Self-service">
      <h2>
        Self-service <span className="soft">{stageWords(order)}</span>
      </h2>
      <Facts order={order} />
      <AskedByLink enquiryId={enquiryId} asks={order.asks} />
      <ul className="deeds">
        {offered.map(({ deed, words, help }) => (
          <li key={deed}>
            <button type="button" className="button" disabled={isBusy} onClick={() => act(deed)}>
              {words}
            </button>{' '}
            <span className="soft">{help}</span>
          </li>
        ))}
      </ul>
      {link !== '' && (
        <p>
          New link, shown this once: <code>{link}</code>
        </p>
      )}
      <p role="status">{said}</p>
    </section>
  );
}

const DONE: Readonly<Record<Deed, string>> = {
  'take-over': 'It is yours now. Revise it, issue a quote, then send it back.',
  'send-back': 'Sent back: its owner may go on.',
  'withdraw-links': 'No link opens it any more. Send it back to make a new one.',
};

function mayDo({ takenBy, stage, links }: SelfOrderView, deed: Deed): boolean {
  if (deed === 'take-over') return takenBy === '';
  if (deed === 'send-back') return takenBy !== '' || stage === 'handed over';
  return links.some(({ withdrawnAt }) => withdrawnAt === '');
}

function Facts({ order }: Pick<PanelProps, 'order'>) {
  const { name = '', firm = '', email = '', telephone = '' } = order.contact;
  const who = [name, firm, email, telephone].filter((text) => text !== '').join(', ');
  const open = order.links.filter(({ withdrawnAt }) => withdrawnAt === '');
  const last = open
    .map(({ expiresAt }) => expiresAt)
    .toSorted()
    .at(-1);
  return (
    <>
      <p>
        {who === '' ? 'Nobody has said who they are yet.' : `${who}.`}{' '}
        {order.takenBy === '' ? 'Nobody has taken it over.' : `Taken over by ${order.takenBy}.`} They read{' '}
        {order.language === 'de' ? 'German' : 'English'}.{' '}
        {open.length === 0
          ? 'No link opens it.'
          : `${open.length} ${open.length === 1 ? 'link opens' : 'links open'} it`}
        {last !== undefined && (
          <>
            , until <ShownDate on={last.slice(0, 10)} />.
          </>
        )}
        {order.quote !== null && ` Newest quote: ${order.quote.name}, ${order.quote.standing}.`}
      </p>
      {order.reasons.length > 0 && (
        <details>
          <summary>Why it came here ({order.reasons.length})</summary>
          <ul>
            {order.reasons.map(({ tag, sentence }) => (
              <li key={`${tag} ${sentence}`}>
                {tag !== '' && <strong>{tag}: </strong>}
                {sentence}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
