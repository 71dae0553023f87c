/*
 * Which of the ways to serve an order is shown and quoted: least cost, fewest pieces, shortest time, surest.
 * Invariant: one of the four; choosing changes no valve and no date.
 * Not here: working the ways out (work-order.ts).
 * Read next: order-answer.ts.
 */
import { failed, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { PREFERENCES } from '#lib/services/enquiries/enquiry-record.ts';
import { type LinkAsked, openToChange } from './open-link.ts';
import { changedDraft } from './order-record.ts';

export function chooseWay(
  context: Context,
  input: LinkAsked & { readonly way: string },
): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const preference = PREFERENCES.find((name) => name === input.way);
  if (preference === undefined)
    return failed({ code: 'form-unreadable', sentence: 'Choose one of the ways that are shown.' });
  const changed = changeEnquiry(opened.value.desk, { enquiryId: opened.value.order.enquiry_id, preference });
  if (changed.ok) changedDraft(context, opened.value);
  return changed;
}
