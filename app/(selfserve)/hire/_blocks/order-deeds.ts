import { hirePaths } from '#app/_lib/hire-paths.ts';
import { idOf } from '#app/_lib/respond.ts';
import { acceptanceSchema, orderContactSchema, orderPlaceSchema } from '#lib/contracts/self-service.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { acceptOrder, cancelOrder } from '#lib/services/self-service/accept-order.ts';
import { addList } from '#lib/services/self-service/add-list.ts';
import { addPhoto } from '#lib/services/self-service/add-photo.ts';
import { chooseWay } from '#lib/services/self-service/choose-way.ts';
import { extendOrder } from '#lib/services/self-service/extend-order.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';
import { takeListColumns } from '#lib/services/self-service/list-columns.ts';
import { giveOrderOffHire } from '#lib/services/self-service/off-hire-order.ts';
import type { LinkAsked } from '#lib/services/self-service/open-link.ts';
import { openPart } from '#lib/services/self-service/open-part.ts';
import { addValve, answerValve, removeValve } from '#lib/services/self-service/order-lines.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { setPlace } from '#lib/services/self-service/set-place.ts';
import type { Language } from '#lib/wording/language.ts';
import { fileIn, listIn, textsIn } from './form-texts.ts';
import { fieldsIn, fieldsText } from './list-fields-text.ts';

export interface DeedAsked {
  readonly asked: LinkAsked;
  /** Of the page that it was sent from. */
  readonly language: Language;
  readonly deed: string;
  readonly form: FormData;
}

export interface DeedDone {
  readonly result: Result<unknown>;
  /** The page to go to afterwards. */
  readonly to: string;
}

/** What a form of an order asks for, by the last part of its address. */
export async function orderDeed(context: Context, sent: DeedAsked): Promise<DeedDone> {
  const { asked, deed, form } = sent;
  const fields = textsIn(form);
  const lineId = idOf(fields.line ?? '');
  const order = hirePaths.order(asked.token);
  const valve = hirePaths.valve(asked.token, lineId);
  switch (deed) {
    case 'answer':
      return { result: answer(context, { asked, fields, lineId }), to: valve };
    case 'photo':
      return { result: await photo(context, sent), to: valve };
    case 'remove':
      return { result: removeValve(context, { ...asked, lineId }), to: order };
    case 'valve':
      return addedValve(context, asked);
    case 'list':
      return list(context, sent);
    case 'list-columns':
      return listColumns(context, sent);
    case 'place':
      return { result: place(context, { asked, fields }), to: order };
    case 'way':
      return { result: chooseWay(context, { ...asked, way: fields.way ?? '' }), to: order };
    case 'quote':
      return { result: await quote(context, { asked, fields, language: sent.language }), to: order };
    case 'accept':
      return { result: accept(context, { asked, fields }), to: order };
    case 'cancel':
      return { result: cancelOrder(context, { ...asked, reason: '' }), to: order };
    case 'off-hire':
      return { result: offHire(context, sent), to: order };
    case 'extend':
      return { result: extend(context, { asked, fields }), to: order };
    case 'part':
      return part(context, { asked, fields });
    case 'hand-over':
      return handOver(context, { asked, fields });
    default:
      return { result: unreadable(), to: order };
  }
}

interface Sent {
  readonly asked: LinkAsked;
  readonly fields: Readonly<Record<string, string>>;
}

function unreadable(): Result<never> {
  return failed({ code: 'form-unreadable', sentence: 'Something in the form is missing or cannot be read.' });
}

function answer(context: Context, { asked, fields, lineId }: Sent & { readonly lineId: number }): Result<unknown> {
  const { column = '', unknown } = fields;
  const text = fields.answer === undefined || fields.answer === '' ? (fields.written ?? '') : fields.answer;
  if (unknown !== 'yes' && text.trim() === '') return unreadable();
  const one = { column, text, unknown: unknown === 'yes' ? ('yes' as const) : ('no' as const) };
  return answerValve(context, { ...asked, lineId, answers: [one] });
}

function addedValve(context: Context, asked: LinkAsked): DeedDone {
  const result = addValve(context, { ...asked, answers: [] });
  const to = result.ok ? hirePaths.valve(asked.token, result.value.lineId) : hirePaths.order(asked.token);
  return { result, to };
}

async function photo(context: Context, { asked, form }: DeedAsked): Promise<Result<unknown>> {
  const sent = await fileIn(form, 'photo');
  const lineId = idOf(String(form.get('line') ?? ''));
  return addPhoto(context, { ...asked, lineId, bytes: sent?.bytes ?? new Uint8Array() });
}

async function list(context: Context, { asked, form }: DeedAsked): Promise<DeedDone> {
  const sent = await listIn(form);
  const to = hirePaths.order(asked.token);
  if (sent === null) return { result: unreadable(), to };
  const result = await addList(context, { ...asked, ...sent });
  const waits = result.ok && result.value.kind === 'to confirm';
  return { result, to: waits ? hirePaths.list(asked.token, result.value.fileId) : to };
}

/** Shows the list again as its columns are now chosen, or takes it. */
async function listColumns(context: Context, { asked, form }: DeedAsked): Promise<DeedDone> {
  const { list: id = '', table = '', then } = textsIn(form);
  const fileId = idOf(id);
  const fields = fieldsIn(form);
  const again = `${hirePaths.list(asked.token, fileId)}?${new URLSearchParams({ table, as: fieldsText(fields) })}`;
  if (then !== 'take') return { result: ok(true), to: again };
  const result = await takeListColumns(context, { ...asked, fileId, table, fields });
  return { result, to: result.ok ? hirePaths.order(asked.token) : again };
}

function place(context: Context, { asked, fields }: Sent): Result<unknown> {
  const { name, zone, vehicle_access, enclosed } = fields;
  const read = orderPlaceSchema.safeParse({
    starts_on: fields.starts_on,
    days: Number(fields.days),
    name,
    ...(zone === undefined || zone === '' ? {} : { zone }),
    ...yesOrNo('vehicle_access', vehicle_access),
    ...yesOrNo('enclosed', enclosed),
  });
  return read.success ? setPlace(context, { ...asked, place: read.data }) : unreadable();
}

function yesOrNo(name: string, text: string | undefined): Readonly<Record<string, boolean>> {
  return text === 'yes' || text === 'no' ? { [name]: text === 'yes' } : {};
}

function contactIn(fields: Sent['fields']) {
  const { name, firm, email, telephone = '' } = fields;
  return orderContactSchema.safeParse({ name, firm, email, ...(telephone === '' ? {} : { telephone }) });
}

async function quote(
  context: Context,
  { asked, fields, language }: Sent & Pick<DeedAsked, 'language'>,
): Promise<Result<unknown>> {
  const contact = contactIn(fields);
  return contact.success ? quoteOrder(context, { ...asked, contact: contact.data, language }) : unreadable();
}

function accept(context: Context, { asked, fields }: Sent): Result<unknown> {
  const { quote: number, name, order_number, terms, option } = fields;
  const chosen = option === undefined ? {} : { option: Number(option) };
  const read = acceptanceSchema.safeParse({ quote: number, name, order_number, terms, ...chosen });
  return read.success ? acceptOrder(context, { ...asked, acceptance: read.data }) : unreadable();
}

function handOver(context: Context, { asked, fields }: Sent): DeedDone {
  const to = hirePaths.order(asked.token);
  const contact = contactIn(fields);
  if (!contact.success) return { result: unreadable(), to };
  const which = fields.which === 'marked' ? 'marked' : 'all';
  const result = handOverOrder(context, { ...asked, contact: contact.data, which, message: fields.message ?? '' });
  const apart = result.ok && result.value.lookToken !== null;
  return { result, to: apart ? `${to}?handed=${result.value.number}` : to };
}

function offHire(context: Context, { asked, form }: DeedAsked): Result<unknown> {
  const serials = form.getAll('serial').flatMap((value) => (typeof value === 'string' ? [value.slice(0, 60)] : []));
  const { name = '' } = textsIn(form);
  return serials.length === 0
    ? unreadable()
    : giveOrderOffHire(context, { ...asked, saidBy: name.slice(0, 120), serials });
}

function extend(context: Context, { asked, fields: { until = '', name = '' } }: Sent): Result<unknown> {
  if (name.trim() === '') return unreadable();
  return extendOrder(context, { ...asked, until, askedBy: name.trim().slice(0, 120) });
}

function part(context: Context, { asked, fields }: Sent): DeedDone {
  const result = openPart(context, { ...asked, number: fields.part ?? '' });
  return { result, to: hirePaths.order(result.ok ? result.value.token : asked.token) };
}
