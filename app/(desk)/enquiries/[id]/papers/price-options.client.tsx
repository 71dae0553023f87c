'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PREFERENCE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { ShownMoney } from '#app/_ui/shown-forms.client.tsx';
import { countText, hoursText } from '#lib/documents/words/print-values.ts';
import type { OptionSummary, PriceView } from '#lib/services/quotes/price-view.ts';
import { OptionForm } from './option-form.client.tsx';
import sheet from './price-sheet.module.css';

interface OptionsProps {
  readonly enquiryId: number;
  readonly view: PriceView;
  /** Parts locked, left out and pinned on the Kits page, as they are stored. */
  readonly constraints: Readonly<Record<string, unknown>>;
}

/** The options of the quote side by side; one is shown in full below. */
export function PriceOptions({ enquiryId, view, constraints }: OptionsProps) {
  const { options } = view;
  const { dialog, form, gone, problem, page, open, close, closed, done, keep } = useOptions(enquiryId);

  return (
    <section className={styles.panel} aria-labelledby="options">
      <div className={styles.spread}>
        <h2 id="options">Options of the quote</h2>
        <span className={styles.row}>
          {gone === null ? null : (
            <button type="button" className={styles.button} onClick={() => keep('POST', gone)}>
              Put “{gone.name}” back
            </button>
          )}
          <button type="button" className={styles.button} onClick={() => open('add')}>
            Add an option
          </button>
        </span>
      </div>
      <ul className={sheet.options}>
        {options.map((option, index) => (
          <OptionCard
            key={option.slot}
            option={option}
            number={options.length === 1 ? '' : `${index + 1}: `}
            view={view}
            page={page}
            onChange={() => open('change')}
            onRemove={() => keep('DELETE', option)}
          />
        ))}
      </ul>
      {options.length === 1 ? (
        <p className={styles.soft}>
          With a second option, such as another power source, crew or number of days, the quote shows both side by side
          and the customer orders one.
        </p>
      ) : null}
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      <dialog ref={dialog} className={`${styles.dialog} ${sheet.form}`} aria-labelledby="option-title" onClose={closed}>
        {form === null ? null : (
          <OptionForm {...{ enquiryId, view, constraints }} which={form} onDone={done} onClose={close} />
        )}
      </dialog>
    </section>
  );
}

/** Adding, changing, removing and putting back an option, and the page that shows one. */
function useOptions(enquiryId: number) {
  const router = useRouter();
  const dialog = useRef<HTMLDialogElement>(null);
  const [form, setForm] = useState<'add' | 'change' | null>(null);
  const [gone, setGone] = useState<OptionSummary | null>(null);
  const [problem, setProblem] = useState('');
  const page = (slot: number) => `/enquiries/${enquiryId}/papers${slot === 0 ? '' : `?option=${slot}`}`;

  function open(which: 'add' | 'change'): void {
    setForm(which);
    dialog.current?.showModal();
  }

  const close = () => dialog.current?.close();

  function done(slot: number): void {
    close();
    router.push(page(slot));
    router.refresh();
  }

  async function keep(method: 'DELETE' | 'POST', option: OptionSummary): Promise<void> {
    const answer = await send({ path: `/api/v1/enquiries/${enquiryId}/options/${option.slot}`, method });
    setProblem(answer.ok ? '' : answer.sentence);
    if (answer.ok) setGone(method === 'DELETE' ? option : null);
    router.push(page(method === 'DELETE' ? 0 : option.slot));
    router.refresh();
  }

  return { dialog, form, gone, problem, page, open, close, closed: () => setForm(null), done, keep };
}

interface CardProps {
  readonly option: OptionSummary;
  readonly number: string;
  readonly view: PriceView;
  readonly page: (slot: number) => string;
  readonly onChange: () => void;
  readonly onRemove: () => void;
}

function OptionCard({ option, number, view, page, onChange, onRemove }: CardProps) {
  const isShown = option.slot === view.shown.slot;
  return (
    <li className={sheet.option} data-shown={isShown ? 'yes' : 'no'}>
      <strong>
        {number}
        {option.name}
      </strong>
      <OptionFigures option={option} currency={view.currency} />
      <span className={styles.row}>
        {isShown ? (
          <>
            {number === '' ? null : <span className={styles.soft}>✓ shown below</span>}
            <button
              type="button"
              className={styles.small}
              aria-label={`Change option ${option.name}`}
              onClick={onChange}
            >
              {option.slot === 0 ? 'Rename' : 'Change'}
            </button>
          </>
        ) : (
          <Link href={page(option.slot)} scroll={false} aria-label={`Show option ${option.name}`}>
            Show
          </Link>
        )}
        {option.slot === 0 ? null : (
          <button
            type="button"
            className={styles.small}
            aria-label={`Take out option ${option.name}`}
            onClick={onRemove}
          >
            Take out
          </button>
        )}
      </span>
    </li>
  );
}

function OptionFigures({ option, currency }: { readonly option: OptionSummary; readonly currency: string }) {
  const { site, figures } = option;
  return (
    <>
      <p>
        {countText(site.crews, 'crew')}, {countText(site.days, 'day')}, {site.sourcesAllowed.join(' or ')}
        <br />
        <span className={styles.soft}>{PREFERENCE_NAMES[option.preference]}</span>
      </p>
      {figures === null ? (
        <p className={styles.soft}>Not planned yet.</p>
      ) : (
        <p>
          <strong>
            <ShownMoney minor={figures.gross_minor} currency={currency} /> {currency}
          </strong>{' '}
          with tax
          <br />
          <span className={styles.soft}>
            {figures.served} of {countText(figures.asked, 'valve')} · {hoursText(figures.hours)}
          </span>
        </p>
      )}
      {option.hindrance === '' ? null : <p className={styles.soft}>{option.hindrance}</p>}
    </>
  );
}
