'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { SelfOrderView } from '#lib/services/self-service/take-over.ts';

interface PanelProps {
  readonly enquiryId: number;
  readonly order: SelfOrderView;
}

const DEEDS = [
  { deed: 'take-over', words: 'Take over', help: 'You work on it; its owner may look and no longer change it.' },
  { deed: 'send-back', words: 'Send back', help: 'Its owner may go on. A new link is shown here once.' },
  { deed: 'withdraw-links', words: 'Withdraw links', help: 'No link that was given out opens it any more.' },
] as const;

/** An enquiry that came by self-service: who, how far, and what the Desk may do about it. */
export function SelfServicePanel({ enquiryId, order }: PanelProps) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [link, setLink] = useState('');
  const [isBusy, setBusy] = useState(false);
  async function act(deed: (typeof DEEDS)[number]['deed']) {
    setBusy(true);
    const sent = await send<{ readonly token?: string }>({
      method: 'POST',
      path: `/api/v1/enquiries/${enquiryId}/self-service`,
      body: { deed },
    });
    setBusy(false);
    setSaid(sent.ok ? 'Done.' : sent.sentence);
    if (sent.ok && sent.value.token !== undefined) setLink(`${location.origin}/hire/${sent.value.token}`);
    router.refresh();
  }
  const { name = '', firm = '', email = '', telephone = '' } = order.contact;
  const open = order.links.filter(({ withdrawnAt }) => withdrawnAt === '').length;
  const offered = DEEDS.filter(({ deed }) => (deed === 'take-over' ? order.takenBy === '' : true));
  return (
    <section className="card" aria-label="Self-service">
      <h2>
        Self-service <span className="soft">{order.stage}</span>
      </h2>
      <p>
        {[name, firm, email, telephone].filter((text) => text !== '').join(', ') || 'Nobody has said who they are yet.'}{' '}
        {order.takenBy === '' ? 'Nobody has taken it over.' : `Taken over by ${order.takenBy}.`} Language:{' '}
        {order.language}. {open} {open === 1 ? 'link opens' : 'links open'} it.
      </p>
      <p className="actions">
        {offered.map(({ deed, words, help }) => (
          <button key={deed} type="button" className="button" title={help} disabled={isBusy} onClick={() => act(deed)}>
            {words}
          </button>
        ))}
      </p>
      {link !== '' && (
        <p>
          New link, shown this once: <code>{link}</code>
        </p>
      )}
      <p role="status">{said}</p>
    </section>
  );
}
