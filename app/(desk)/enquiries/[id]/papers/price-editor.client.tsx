'use client';
import { useRef, useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownMoney, ShownWindow } from '#app/_ui/shown-forms.client.tsx';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import { ManualLineForm } from './manual-line-form.client.tsx';
import { PriceDiscounts } from './price-discounts.client.tsx';
import type { EditorProps, Kept } from './price-editor-props.ts';
import sheet from './price-sheet.module.css';
import { usePriceChoices } from './use-price-choices.client.ts';

type Line = PriceChoices['lines'][number];

/** Lines added by hand, discounts and terms of one option; every change is kept as it is made. */
export function PriceEditor({ enquiryId, view }: EditorProps) {
  const { slot, version, choices, warnings } = view.shown;
  const kept = usePriceChoices({ enquiryId, slot, version, choices });
  const [open, setOpen] = useState<Line | 'new' | null>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const { lines } = choices;

  function show(line: Line | 'new'): void {
    setOpen(line);
    dialog.current?.showModal();
  }

  async function keep(line: Line): Promise<void> {
    const isNew = !lines.some(({ id }) => id === line.id);
    const next = isNew ? [...lines, line] : lines.map((one) => (one.id === line.id ? line : one));
    const done = await kept.change(
      { ...choices, lines: next },
      isNew ? `Added “${line.text}”.` : `Changed “${line.text}”.`,
    );
    if (done) dialog.current?.close();
  }

  return (
    <>
      <section className={styles.panel} aria-labelledby="added">
        <div className={styles.spread}>
          <h2 id="added">Lines added by hand</h2>
          <span className={styles.row}>
            {kept.undo === null ? null : (
              <button type="button" className={styles.button} disabled={kept.busy} onClick={kept.undo}>
                Undo
              </button>
            )}
            <button type="button" className={styles.button} onClick={() => show('new')}>
              Add a line
            </button>
          </span>
        </div>
        <ManualLines view={view} kept={kept} onEdit={show} />
        {warnings.map((warning) => (
          <p key={warning} className={styles.notice}>
            {warning}
          </p>
        ))}
        <Told kept={kept} />
        <dialog
          ref={dialog}
          className={`${styles.dialog} ${sheet.form}`}
          aria-labelledby="line-title"
          onClose={() => setOpen(null)}
        >
          {open === null ? null : (
            <ManualLineForm
              key={open === 'new' ? 'new' : open.id}
              line={open === 'new' ? null : open}
              view={view}
              busy={kept.busy}
              onKeep={keep}
              onClose={() => dialog.current?.close()}
            />
          )}
        </dialog>
      </section>
      <PriceDiscounts view={view} kept={kept} />
    </>
  );
}

/** What was done, and what could not be. */
export function Told({ kept }: { readonly kept: Kept }) {
  return (
    <div aria-live="polite">
      {kept.problem === '' ? null : <p className={styles.refused}>{kept.problem}</p>}
      {kept.problem !== '' || kept.said === '' ? null : <p className={styles.soft}>{kept.said}</p>}
    </div>
  );
}

interface LinesProps extends Pick<EditorProps, 'view'> {
  readonly kept: Kept;
  readonly onEdit: (line: Line) => void;
}

function ManualLines({ view, kept, onEdit }: LinesProps) {
  const { choices } = view.shown;
  if (choices.lines.length === 0) {
    return (
      <p className={styles.soft}>
        None yet. Transport, our operators, training, consumables, things sold, pieces hired in from another house and
        adapters made to fit are added here; {view.priceList.length} items stand on the house&apos;s price list.
      </p>
    );
  }
  const place = (lines: PriceChoices['lines'], what: string) => kept.change({ ...choices, lines }, what);
  return (
    <ol className={sheet.lines}>
      {choices.lines.map((line, index) => (
        <li key={line.id} className={sheet.line}>
          <span className={sheet.what}>
            <strong>{line.text}</strong>
            <br />
            <span className={styles.soft}>
              <LineWords line={line} currency={view.currency} />
            </span>
          </span>
          <span className={styles.row}>
            <Step name={`Edit ${line.text}`} words="Edit" busy={kept.busy} act={() => onEdit(line)} />
            <Step
              name={`Move ${line.text} up`}
              words="↑"
              busy={kept.busy || index === 0}
              act={() => place(swapped(choices.lines, index - 1), `Moved “${line.text}” up.`)}
            />
            <Step
              name={`Move ${line.text} down`}
              words="↓"
              busy={kept.busy || index === choices.lines.length - 1}
              act={() => place(swapped(choices.lines, index), `Moved “${line.text}” down.`)}
            />
            <Step
              name={`Remove ${line.text}`}
              words="Remove"
              busy={kept.busy}
              act={() =>
                place(
                  choices.lines.filter(({ id }) => id !== line.id),
                  `Removed “${line.text}”.`,
                )
              }
            />
          </span>
        </li>
      ))}
    </ol>
  );
}

function Step({
  name,
  words,
  busy,
  act,
}: {
  readonly name: string;
  readonly words: string;
  readonly busy: boolean;
  readonly act: () => void;
}) {
  return (
    <button type="button" className={styles.small} aria-label={name} disabled={busy} onClick={act}>
      {words}
    </button>
  );
}

/** Two neighbours change places. */
function swapped(lines: PriceChoices['lines'], first: number): PriceChoices['lines'] {
  const next = [...lines];
  const [one, two] = [next[first], next[first + 1]];
  if (one !== undefined && two !== undefined) next.splice(first, 2, two, one);
  return next;
}

/** What it is, what it costs, and for a re-hired piece where it comes from. */
function LineWords({ line, currency }: { readonly line: Line; readonly currency: string }) {
  const { rehired } = line;
  return (
    <>
      {line.kind} · {line.quantity} {line.unit} at <ShownMoney minor={line.unit_minor} currency={currency} /> {currency}{' '}
      {line.per === 'day' ? 'a day' : 'once'} · tax {line.tax}
      {line.list_item === null ? '' : ' · price list'}
      {rehired === null ? null : (
        <>
          <br />
          from {rehired.house}, <ShownWindow days={rehired} />, costs us{' '}
          <ShownMoney minor={rehired.cost_minor} currency={currency} /> {currency}
        </>
      )}
    </>
  );
}
