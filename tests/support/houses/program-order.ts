/** An order that a customer's program made, worked out. */
import type { OrderPlace } from '#lib/contracts/self-service.ts';
import type { Context } from '#lib/services/context.ts';
import { makeKey } from '#lib/services/self-service/open-key.ts';
import { type KeySent, newProgramOrder, programOrder } from '#lib/services/self-service/program-orders.ts';
import { granted } from '../granted.ts';
import { KNOWN } from './known-valve.ts';

export const VALVE = { tag: 'P-1', ...KNOWN };
export const CONTACT = { name: 'Ivo Brandt', firm: 'Brandt', email: 'ivo@brandt.example' };

export function programKey(
  desk: Context,
  { customerId, address }: { readonly customerId: number; readonly address: string },
): KeySent {
  return { token: granted(makeKey(desk, { customerId, name: 'Planner' })).key, address };
}

export async function readyProgramOrder(
  program: Context,
  { place, ...sent }: KeySent & { readonly place: OrderPlace },
) {
  const made = granted(await newProgramOrder(program, { ...sent, order: { place, valves: [VALVE], language: 'en' } }));
  let order = made;
  for (let turn = 0; turn < 4 && order.work === 'running'; turn += 1)
    order = granted(await programOrder(program, { ...sent, enquiryId: made.id }));
  return order;
}
