'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { ApprovalView, DiscountOf } from '#lib/services/quotes/discount-of.ts';

interface ApprovalProps {
  readonly enquiryId: number;
  readonly slot: number;
  readonly discount: DiscountOf;
  /** Id of who looks at it. */
  readonly me: string;
}

/** A discount above the limit: asked for here, decided by somebody else, with every reason kept. */
export function PriceApproval({ enquiryId, slot, discount, me }: ApprovalProps) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const { standing, approvals } = discount;
  if (standing.kind === 'within' && approvals.length === 0) return null;
  const current = 'approvalId' in standing ? approvals.find(({ id }) => id === standing.approvalId) : undefined;

  async function act(request: {
    readonly path: string;
    readonly method: 'POST' | 'PATCH';
    readonly body: unknown;
  }): Promise<void> {
    setBusy(true);
    const answer = await send(request);
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    if (answer.ok) setReason('');
    router.refresh();
  }

  const ask = () =>
    act({ path: `/api/v1/enquiries/${enquiryId}/options/${slot}/approvals`, method: 'POST', body: { reason } });
  const decide = (decision: ApprovalView['state']) =>
    act({ path: `/api/v1/approvals/${current?.id ?? 0}`, method: 'PATCH', body: { decision, reason } });
  const mine = current?.askedBy.id === me;

  return (
    <section
      className={standing.kind === 'approved' || standing.kind === 'within' ? styles.calm : styles.notice}
      aria-labelledby="approval"
    >
      <h2 id="approval" className={styles.title}>
        {TITLES[standing.kind]}
      </h2>
      <p>{tellStanding({ discount, current, mine })}</p>
      {standing.kind === 'within' || standing.kind === 'approved' ? null : (
        <label className={styles.field}>
          {standing.kind === 'to ask' ? 'Why it should be given' : 'Reason of the decision'}
          <input
            className={styles.input}
            value={reason}
            maxLength={1000}
            autoComplete="off"
            onChange={({ target }) => setReason(target.value)}
          />
        </label>
      )}
      <ApprovalActs
        kind={standing.kind}
        mine={mine}
        canWithdraw={current !== undefined}
        busy={busy}
        isSaid={reason.trim() !== ''}
        onAsk={ask}
        onDecide={decide}
      />
      <div role="alert">{problem === '' ? null : <p className={styles.refused}>{problem}</p>}</div>
      <Past approvals={approvals} />
    </section>
  );
}

interface ActsProps {
  readonly kind: DiscountOf['standing']['kind'];
  readonly mine: boolean;
  readonly canWithdraw: boolean;
  readonly busy: boolean;
  /** A reason is typed. */
  readonly isSaid: boolean;
  readonly onAsk: () => void;
  readonly onDecide: (decision: ApprovalView['state']) => void;
}

function ApprovalActs({ kind, mine, canWithdraw, busy, isSaid, onAsk, onDecide }: ActsProps) {
  return (
    <div className={styles.row}>
      {kind === 'to ask' ? (
        <button type="button" className={styles.main} disabled={busy || !isSaid} onClick={onAsk}>
          Ask for approval
        </button>
      ) : null}
      {kind === 'asked' && !mine ? (
        <>
          <button type="button" className={styles.main} disabled={busy} onClick={() => onDecide('approved')}>
            Approve the discount
          </button>
          <button
            type="button"
            className={styles.button}
            disabled={busy || !isSaid}
            onClick={() => onDecide('refused')}
          >
            Refuse it
          </button>
        </>
      ) : null}
      {canWithdraw ? (
        <button type="button" className={styles.button} disabled={busy} onClick={() => onDecide('withdrawn')}>
          {kind === 'approved' ? 'Withdraw the approval' : 'Withdraw the request'}
        </button>
      ) : null}
    </div>
  );
}

const TITLES: Readonly<Record<DiscountOf['standing']['kind'], string>> = {
  within: 'Discount within the limit',
  approved: 'Discount approved',
  asked: 'Discount waits for approval',
  'to ask': 'Discount above the limit',
};

const BECAUSE = {
  'never asked': 'Somebody else of the Desk, or an administrator, has to approve it before the quote can be issued.',
  'lower since': 'What was approved or asked for was another price, so this one needs approval of its own.',
  refused: 'It was refused. Lower it, or ask again with another reason.',
  withdrawn: 'The approval was withdrawn. Lower it, or ask again.',
} as const;

interface Telling {
  readonly discount: DiscountOf;
  readonly current: ApprovalView | undefined;
  readonly mine: boolean;
}

function tellStanding({ discount, current, mine }: Telling): string {
  const { standing, limit, above } = discount;
  switch (standing.kind) {
    case 'within':
      return `Nothing is above ${limit} % now.`;
    case 'approved':
      return `${above}: ${current?.decidedBy ?? 'somebody'} approved it for this price. A change that gives more, or comes to less, needs it anew.`;
    case 'asked':
      return `${above}. ${current?.askedBy.name ?? 'Somebody'} asked: “${current?.reason ?? ''}”. ${mine ? 'You asked, so somebody else of the Desk, or an administrator, decides. The quote cannot be issued until then.' : 'Look at the price above, then decide.'}`;
    case 'to ask':
      return `${above} is above the limit of ${limit} %. ${BECAUSE[standing.because]}`;
  }
}

function Past({ approvals }: { readonly approvals: readonly ApprovalView[] }) {
  if (approvals.length === 0) return null;
  return (
    <details>
      <summary>All requests ({approvals.length})</summary>
      <ul className={styles.list}>
        {approvals.map((one) => (
          <li key={one.id}>
            <ShownMoment at={one.askedAt} />, {one.askedBy.name}: {one.about}, “{one.reason}”. {one.state}
            {one.decidedAt !== '' && (
              <>
                {' '}
                <ShownMoment at={one.decidedAt} /> by {one.decidedBy}
              </>
            )}
            {one.decision === '' ? '' : `: “${one.decision}”`}.
          </li>
        ))}
      </ul>
    </details>
  );
}
