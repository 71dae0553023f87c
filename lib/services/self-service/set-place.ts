/*
 * Where and when an order is for: dates, place, and what is known of the whole site.
 * Invariant: only facts that a stranger can know are taken; crews and house rules stay as the house has them.
 * Not here: facts of one valve (order-lines.ts).
 * Read next: open-link.ts, ../enquiries/change-enquiry.ts.
 */
import type { OrderPlace } from '#lib/contracts/self-service.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { type LinkAsked, openToChange } from './open-link.ts';
import { changedDraft } from './order-record.ts';

export function setPlace(
  context: Context,
  input: LinkAsked & { readonly place: OrderPlace },
): Result<{ readonly version: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const dated = soundDates(context, input.place);
  if (!dated.ok) return dated;
  const { desk, enquiry } = opened.value;
  const before = JSON.parse(enquiry.row.site_json) as Readonly<Record<string, unknown>>;
  const changed = changeEnquiry(desk, {
    enquiryId: enquiry.row.id,
    site: siteFacts(before, input.place),
    title: titleOf(input.place),
  });
  if (changed.ok) changedDraft(context, opened.value);
  return changed;
}

/** Nothing can be picked and sent the same day. */
export function soundDates(context: Context, { starts_on }: Pick<OrderPlace, 'starts_on'>): Result<true> {
  if (starts_on > today(context)) return ok(true);
  return failed({
    code: 'dates-past',
    sentence: 'The first day of hire must be tomorrow or later.',
  });
}

export function titleOf({ name }: Pick<OrderPlace, 'name'>): string {
  return name === undefined || name === '' ? 'Self-service' : `Self-service, ${name}`;
}

/** What the form says over what was there; what it leaves unsaid is unsaid. */
export function siteFacts(
  before: Readonly<Record<string, unknown>>,
  place: OrderPlace,
): Readonly<Record<string, unknown>> {
  const { name: _name, zone: _zone, vehicle_access: _vehicle, enclosed: _enclosed, ...kept } = before;
  return {
    ...kept,
    starts_on: place.starts_on,
    days: place.days,
    ...(place.name === undefined || place.name === '' ? {} : { name: place.name }),
    ...(place.zone === undefined ? {} : { zone: place.zone }),
    ...(place.vehicle_access === undefined ? {} : { vehicle_access: place.vehicle_access }),
    ...(place.enclosed === undefined ? {} : { enclosed: place.enclosed }),
  };
}
