'use client';
import { type FormEvent, useRef, useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import { GROUP_NAMES, LINE_GROUPS } from '#lib/pricing/line-groups.ts';
import type { EditorProps, Kept } from './price-editor-props.ts';
import { Field } from './price-fields.client.tsx';
import sheet from './price-sheet.module.css';

type Discounts = PriceChoices['discounts'];

interface DiscountProps extends Pick<EditorProps, 'view'> {
  readonly kept: Kept;
}

/** What is given away, and the choices that hold for the whole price. */
export function PriceDiscounts({ view, kept }: DiscountProps) {
  const { choices } = view.shown;
  const dialog = useRef<HTMLDialogElement>(null);
  const [round, setRound] = useState(0);
  const given = tellDiscounts(choices.discounts);
  return (
    <section className={styles.panel} aria-labelledby="discounts">
      <div className={styles.spread}>
        <h2 id="discounts">Discount and terms</h2>
        <button
          type="button"
          className={styles.button}
          onClick={() => {
            setRound(round + 1);
            dialog.current?.showModal();
          }}
        >
          Change the discount
        </button>
      </div>
      <Agreed view={view} kept={kept} />
      {given.length === 0 ? (
        <p className={styles.soft}>
          No discount. Up to <ShownWords>{String(view.limit)}</ShownWords> % of a group of lines is given without
          approval.
        </p>
      ) : (
        <ul className={styles.list}>
          {given.map((sentence) => (
            <li key={sentence}>
              <ShownWords>{sentence}</ShownWords>
            </li>
          ))}
        </ul>
      )}
      <div className={sheet.ticks}>
        <label>
          <input
            type="checkbox"
            checked={choices.waiver === 'taken'}
            disabled={kept.busy}
            onChange={({ target }) =>
              void kept.change(
                { ...choices, waiver: target.checked ? 'taken' : 'declined' },
                'The damage waiver is changed.',
              )
            }
          />{' '}
          Damage waiver is taken
        </label>
        <label>
          <input
            type="checkbox"
            checked={choices.purchase === 'shown'}
            disabled={kept.busy}
            onChange={({ target }) =>
              void kept.change({ ...choices, purchase: target.checked ? 'shown' : 'left out' }, 'The quote is changed.')
            }
          />{' '}
          The quote says after how many days buying would have been cheaper
        </label>
      </div>
      <dialog ref={dialog} className={`${styles.dialog} ${sheet.form}`} aria-labelledby="discount-title">
        <DiscountForm key={round} view={view} kept={kept} onClose={() => dialog.current?.close()} />
      </dialog>
    </section>
  );
}

/** What the customer's terms say, given with one press; limit and approval hold for it as for any other. */
function Agreed({ view, kept }: DiscountProps) {
  const { agreed } = view;
  const { choices } = view.shown;
  if (agreed === null || choices.discounts.whole?.percent === agreed.percent) return null;
  const whole = { percent: agreed.percent, reason: AGREED_REASON };
  return (
    <p className={`${styles.calm} ${styles.row}`}>
      <span>
        <ShownWords>{`${agreed.percent} %`}</ShownWords> off the whole quote is agreed with {agreed.customer}.
        {choices.discounts.whole === null ? '' : ' It would take the place of the discount on the whole quote.'}
      </span>
      <button
        type="button"
        className={styles.button}
        disabled={kept.busy}
        onClick={() =>
          void kept.change(
            { ...choices, discounts: { ...choices.discounts, whole } },
            `The agreed ${agreed.percent} % is given.`,
          )
        }
      >
        Give the agreed <ShownWords>{`${agreed.percent} %`}</ShownWords>
      </button>
    </p>
  );
}

const AGREED_REASON = 'as agreed in your terms';

const PLACES = ['whole', ...LINE_GROUPS] as const;
type Place = (typeof PLACES)[number];
type Typed = Readonly<Record<string, { readonly percent: string; readonly reason: string }>>;
const EMPTY = { percent: '', reason: '' };

function placeName(place: Place): string {
  return place === 'whole' ? 'the whole quote' : GROUP_NAMES[place];
}

function DiscountForm({ view, kept, onClose }: DiscountProps & { readonly onClose: () => void }) {
  const { choices } = view.shown;
  const [typed, setTyped] = useState<Typed>(typedOf(choices.discounts));
  const [problem, setProblem] = useState('');

  async function keep(event: FormEvent): Promise<void> {
    event.preventDefault();
    const read = readDiscounts(typed);
    if (typeof read === 'string') return setProblem(read);
    if (await kept.change({ ...choices, discounts: read }, 'The discount is changed.')) onClose();
  }

  return (
    <form onSubmit={keep} noValidate>
      <h2 id="discount-title">Discount</h2>
      <p>
        Percent of each group of lines, and of the whole quote after those. Above {view.limit} % of a group somebody
        else has to approve it. The damage waiver carries no discount.
      </p>
      <div className={sheet.discounts}>
        {PLACES.map((place) => {
          const one = typed[place] ?? EMPTY;
          const set = (change: Partial<typeof EMPTY>) => setTyped({ ...typed, [place]: { ...one, ...change } });
          return (
            <fieldset key={place}>
              <legend>On {placeName(place)}</legend>
              <Field label="Percent" value={one.percent} onChange={(percent) => set({ percent })} inputMode="decimal" />
              <Field
                label="Reason, as it stands on the quote"
                value={one.reason}
                onChange={(reason) => set({ reason })}
              />
            </fieldset>
          );
        })}
      </div>
      {problem === '' && kept.problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem === '' ? kept.problem : problem}
        </p>
      )}
      <div className={styles.row}>
        <button type="submit" className={styles.main} disabled={kept.busy}>
          Keep the discount
        </button>
        <button type="button" className={styles.button} disabled={kept.busy} onClick={onClose}>
          Leave it
        </button>
      </div>
    </form>
  );
}

function typedOf({ groups, whole }: Discounts): Typed {
  const entries = [
    ...(whole === null ? [] : [['whole', { percent: String(whole.percent), reason: whole.reason }] as const]),
    ...groups.map(({ group, percent, reason }) => [group, { percent: String(percent), reason }] as const),
  ];
  return Object.fromEntries(entries);
}

/** Empty percentages give nothing; the others need a reason. */
function readDiscounts(typed: Typed): Discounts | string {
  const read = PLACES.flatMap((place) => {
    const { percent, reason } = typed[place] ?? EMPTY;
    const value = Number(percent.trim().replace(',', '.'));
    return percent.trim() === '' || value === 0 ? [] : [{ place, percent: value, reason: reason.trim() }];
  });
  const wrong = read.find(({ percent }) => !(percent > 0 && percent <= 100));
  if (wrong !== undefined) return `Type a percentage from 0 to 100 for ${placeName(wrong.place)}.`;
  const silent = read.find(({ reason }) => reason === '');
  if (silent !== undefined) return `Say why ${placeName(silent.place)} is cheaper: the customer reads it.`;
  const whole = read.find(({ place }) => place === 'whole');
  return {
    whole: whole === undefined ? null : { percent: whole.percent, reason: whole.reason },
    groups: LINE_GROUPS.flatMap((group) => {
      const one = read.find(({ place }) => place === group);
      return one === undefined ? [] : [{ group, percent: one.percent, reason: one.reason }];
    }),
  };
}

function tellDiscounts({ groups, whole }: Discounts): readonly string[] {
  return [
    ...groups.map(({ group, percent, reason }) => `${percent} % off ${GROUP_NAMES[group]}: ${reason}`),
    ...(whole === null ? [] : [`${whole.percent} % off the whole quote: ${whole.reason}`]),
  ];
}
