/*
 * The first form of self-service: place, dates, and the first valve or a whole list, in one go.
 * Invariant: whatever is left blank is not known yet; nothing is made before the form was found to come from a person.
 * Not here: the steps themselves (start-order.ts, order-lines.ts, add-list.ts).
 * Read next: bot-check.ts.
 */
import { orderPlaceSchema } from '#lib/contracts/self-service.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import type { Language } from '#lib/wording/language.ts';
import { addList } from './add-list.ts';
import { checkForm } from './bot-check.ts';
import { addValve, type ValveAnswer } from './order-lines.ts';
import { siteFacts, soundDates, titleOf } from './set-place.ts';
import { startOrder } from './start-order.ts';

export interface FirstForm {
  readonly address: string;
  readonly language: Language;
  /** Texts of the form by name. */
  readonly fields: Readonly<Record<string, string>>;
  readonly list: { readonly fileName: string; readonly bytes: Uint8Array } | null;
}

export interface BegunOrder {
  readonly token: string;
  /** The first valve; null where a list was sent. */
  readonly lineId: number | null;
  /** The list, where its columns have to be looked at first. */
  readonly listId: number | null;
}

const FIRST_COLUMNS = ['driven_by', 'valve_type', 'size', 'condition'] as const;

export async function beginOrder(context: Context, form: FirstForm): Promise<Result<BegunOrder>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const { fields, address, language, list } = form;
  const { ticket = '', website: trap = '', proof = '' } = fields;
  const person = checkForm(context, { ticket, trap, proof, address });
  if (!person.ok) return person;
  const place = orderPlaceSchema.safeParse({
    starts_on: fields.starts_on,
    days: Number(fields.days),
    ...(fields.zone === undefined || fields.zone === '' ? {} : { zone: fields.zone }),
  });
  if (!place.success)
    return failed({
      code: 'form-unreadable',
      sentence: 'Dates or days are missing or cannot be read: look at them again.',
    });
  const dated = soundDates(context, place.data);
  if (!dated.ok) return dated;
  if (fields.what === 'list' && list === null)
    return failed({ code: 'list-empty', sentence: 'Choose a list or paste its rows first.' });
  const started = startOrder(context, {
    language,
    address,
    site: siteFacts({}, place.data),
    title: titleOf(place.data),
  });
  if (!started.ok) return started;
  const { token } = started.value;
  if (list !== null) {
    const added = await addList(context, { token, address, ...list });
    if (!added.ok) return added;
    return ok({ token, lineId: null, listId: added.value.kind === 'to confirm' ? added.value.fileId : null });
  }
  const added = addValve(context, { token, address, answers: firstAnswers(fields) });
  return added.ok ? ok({ token, lineId: added.value.lineId, listId: null }) : added;
}

/** A blank is no “I don't know” yet: it is asked again only if it can change the answer. */
function firstAnswers(fields: Readonly<Record<string, string>>): readonly ValveAnswer[] {
  return FIRST_COLUMNS.flatMap((column) => {
    const text = (fields[column] ?? '').trim();
    return text === '' ? [] : [{ column, text, unknown: 'no' as const }];
  });
}
