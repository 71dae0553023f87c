import { hirePaths } from '#app/_lib/hire-paths.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import type { ExtensionAnswer } from '#lib/services/self-service/extend-order.ts';
import type { OrderHire } from '#lib/services/self-service/order-hire.ts';
import type { OrderBooking } from '#lib/services/self-service/order-quotes.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { amountIn, dayIn, hourOf } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import { Field } from './frame-blocks.tsx';
import { PieceWords } from './hire-sheets.tsx';
import sheetLook from './sheet.module.css';

interface LongerProps {
  readonly order: OrderView;
  readonly booking: OrderBooking;
  readonly token: string;
  readonly language: Language;
  /** What an extension that was looked at would come to; null where none was. */
  readonly tried: ExtensionAnswer | null;
}

/** How a hire ends, and how it goes on. */
export function LongerSheets(props: LongerProps) {
  return (
    <>
      <NoticeSheet {...props} />
      <ExtendSheet {...props} />
    </>
  );
}

function NoticeSheet({ order, booking, token, language }: LongerProps) {
  const { toNotice, notices, chargeEnds, missing, isLate } = booking.hire;
  const isAway = missing.some(({ lost }) => lost === 'awaited');
  if (notices.length === 0 && (toNotice.length === 0 || !order.mayAct)) return null;
  return (
    <details className={sheetLook.sheet} open={(notices.length > 0 && isAway) || isLate}>
      <summary className={sheetLook.summary}>{say(language, 'notice.title')}</summary>
      {notices.map(({ number, at, saidBy, serials }) => (
        <p key={number} role="status" className={sheetLook.done}>
          {say(language, 'notice.given', { number, date: dayIn(language, at), hour: hourOf(at), name: saidBy })}
          <small>{serials.join(', ')}</small>
        </p>
      ))}
      {notices.length > 0 && isAway && <p>{say(language, 'notice.keep')}</p>}
      {toNotice.length > 0 && order.mayAct && (
        <form method="post" action={hirePaths.deed(token, 'off-hire')}>
          <p>{say(language, chargeEnds === 'collection' ? 'notice.lead-collection' : 'notice.lead-notice')}</p>
          <fieldset className={formLook.choice}>
            <legend>{say(language, 'notice.pieces')}</legend>
            {toNotice.map((piece) => (
              <label key={piece.serial}>
                <input type="checkbox" name="serial" value={piece.serial} defaultChecked />
                <span>
                  <PieceWords piece={piece} language={language} />
                </span>
              </label>
            ))}
          </fieldset>
          <WhoField name="notice-name" order={order} language={language} />
          <button type="submit" className={`button main ${formLook.wide}`}>
            {say(language, 'notice.give')}
          </button>
        </form>
      )}
    </details>
  );
}

interface WhoProps extends Pick<LongerProps, 'order' | 'language'> {
  readonly name: string;
}

function WhoField({ name, order, language }: WhoProps) {
  return (
    <Field name={name} label={say(language, 'contact.name')}>
      <input
        id={name}
        name="name"
        required
        maxLength={120}
        autoComplete="name"
        defaultValue={order.contact.name ?? ''}
      />
    </Field>
  );
}

function ExtendSheet(props: LongerProps) {
  const { order, booking, token, language, tried } = props;
  const { mayExtend, lastDay, asked, extensions } = booking.hire;
  if (!mayExtend && asked === null && extensions.length === 0) return null;
  return (
    <details className={sheetLook.sheet} open={tried !== null || asked !== null || booking.hire.isLate}>
      <summary className={sheetLook.summary}>{say(language, 'longer.title')}</summary>
      <AskedBefore hire={booking.hire} language={language} />
      {tried !== null && <Tried {...props} tried={tried} />}
      {mayExtend && order.mayAct && (
        <form method="get" action={hirePaths.order(token)}>
          <p>{say(language, 'longer.lead')}</p>
          <Field name="until" label={say(language, 'longer.until')}>
            <input
              id="until"
              name="until"
              type="date"
              required
              min={addDays(lastDay, 1)}
              defaultValue={tried?.until ?? addDays(lastDay, 1)}
            />
          </Field>
          <button type="submit" className={`button ${formLook.wide}`}>
            {say(language, 'longer.look')}
          </button>
        </form>
      )}
    </details>
  );
}

function AskedBefore({
  hire: { asked, extensions, lastDay },
  language,
}: {
  readonly hire: OrderHire;
  readonly language: Language;
}) {
  const isGiven = extensions.length > 0 && asked?.state !== 'waits' && asked?.state !== 'declined';
  if (isGiven)
    return (
      <p role="status" className={sheetLook.done}>
        {say(language, 'longer.given', { date: dayIn(language, lastDay) })}
      </p>
    );
  if (asked === null || asked.state === 'given') return null;
  const key = asked.state === 'waits' ? 'longer.waits' : 'longer.declined';
  return (
    <div role="status" className={sheetLook.notFree}>
      <p>{say(language, key, { date: dayIn(language, asked.until) })}</p>
      {asked.answer !== '' && <p>{say(language, 'booked.why', { why: asked.answer })}</p>}
    </div>
  );
}

/** What was looked at, and the one press that takes it or asks for it. */
function Tried({ order, token, language, tried }: LongerProps & { readonly tried: ExtensionAnswer }) {
  const date = dayIn(language, tried.until);
  const isGiven = tried.kind === 'given';
  return (
    <form
      method="post"
      action={hirePaths.deed(token, 'extend')}
      className={isGiven ? sheetLook.done : sheetLook.notFree}
    >
      <p>
        {isGiven && tried.more_minor !== null && tried.more_minor > 0
          ? say(language, 'longer.free', {
              date,
              amount: amountIn(language, { amount_minor: tried.more_minor, currency: tried.currency }),
              currency: tried.currency,
            })
          : say(language, isGiven ? 'longer.no-charge' : 'longer.desk', { date })}
      </p>
      <input type="hidden" name="until" value={tried.until} />
      <WhoField name="longer-name" order={order} language={language} />
      <button type="submit" className={`button main ${formLook.wide}`}>
        {say(language, isGiven ? 'longer.take' : 'longer.ask', { date })}
      </button>
    </form>
  );
}
