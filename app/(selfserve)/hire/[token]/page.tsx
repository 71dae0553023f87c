import type { Metadata } from 'next';
import { hirePaths } from '#app/_lib/hire-paths.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { tryOrderExtension } from '#lib/services/self-service/extend-order.ts';
import { type OrderView, openOrderView } from '#lib/services/self-service/order-view.ts';
import { dayIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import { AnswerSheet } from '../_blocks/answer-sheet.tsx';
import { ApartSheet } from '../_blocks/apart-sheet.tsx';
import { BookedSheet } from '../_blocks/booked-sheet.tsx';
import { HandOverSheet, MakeFirmSheet } from '../_blocks/contact-sheets.tsx';
import { DeviceScript, KeptOrder } from '../_blocks/device-blocks.tsx';
import { NoPage, Refused, type SearchParams, textIn } from '../_blocks/frame-blocks.tsx';
import { HireSheets } from '../_blocks/hire-sheets.tsx';
import { LongerSheets } from '../_blocks/longer-sheets.tsx';
import { PlaceSheet } from '../_blocks/place-sheet.tsx';
import { QuoteSheet } from '../_blocks/quote-sheet.tsx';
import sheetLook from '../_blocks/sheet.module.css';
import { ValveList } from '../_blocks/valve-list.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await strangerAsks()).language, 'order.title') };
}

interface OrderProps {
  readonly params: Promise<{ readonly token: string }>;
  readonly searchParams: SearchParams;
}

export default async function OrderPage({ params, searchParams }: OrderProps) {
  const { context, address, language } = await strangerAsks();
  const { token } = await params;
  const search = await searchParams;
  const view = await openOrderView(context, { token, address, language });
  if (!view.ok) return <NoPage reason={view.reason} language={language} />;
  const order = view.value;
  const until = textIn(search.until);
  const tried = until === undefined ? null : tryOrderExtension(context, { token, address, until });
  const hired = order.stage === 'accepted' ? order.booking : null;
  const refused = tried?.ok === false ? tried.reason.code : textIn(search.refused);
  const shared = { order, token, language };
  const handed = textIn(search.handed);
  return (
    <>
      <h1>{say(language, 'order.title')}</h1>
      <Refused code={refused} wait={textIn(search.wait)} language={language} />
      {handed !== undefined && (
        <p role="status" className={sheetLook.done}>
          {say(language, 'desk.done-apart', { number: handed })}
        </p>
      )}
      <WithDesk order={order} language={language} />
      <ApartSheet {...shared} />
      <BookedSheet {...shared} />
      {hired !== null && <LongerSheets {...shared} booking={hired} tried={tried?.ok ? tried.value : null} />}
      {hired !== null && <HireSheets {...shared} booking={hired} />}
      <QuoteSheet {...shared} />
      <WorkSheet {...shared} from={countIn(search.from)} />
      <MakeFirmSheet {...shared} />
      <HandOverSheet {...shared} />
      <ValveList {...shared} />
      <PlaceSheet {...shared} />
      <p className="soft">{say(language, 'order.link', { date: dayIn(language, order.expiresAt) })}</p>
      <KeptOrder {...shared} />
      <DeviceScript />
    </>
  );
}

interface Shown {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

function WithDesk({ order, language }: Pick<Shown, 'order' | 'language'>) {
  if (!order.withDesk) return null;
  const key = order.stage === 'handed over' ? 'desk.done' : 'desk.taken';
  return (
    <p role="status" className={sheetLook.done}>
      {say(language, key, { number: order.number })}
    </p>
  );
}

function countIn(value: Parameters<typeof textIn>[0]): number {
  const count = Number(textIn(value));
  return Number.isInteger(count) && count > 0 ? count : 0;
}

/** The answer, or how far it is; a page that waits loads itself again, with and without scripts. */
function WorkSheet({ order, token, language, from }: Shown & { readonly from: number }) {
  if (order.answer !== null)
    return <AnswerSheet order={order} answer={order.answer} token={token} language={language} from={from} />;
  if (order.work === 'none') return null;
  if (order.work === 'failed') return <p role="alert">{say(language, 'order.failed')}</p>;
  return (
    <section className={sheetLook.sheet} aria-live="polite">
      <meta httpEquiv="refresh" content={order.work === 'busy' ? '20' : '3'} />
      <p>{say(language, order.work === 'busy' ? 'refused.busy' : 'order.working')}</p>
      <a className="button" href={hirePaths.order(token)}>
        {say(language, 'order.load')}
      </a>
    </section>
  );
}
