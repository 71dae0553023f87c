import { ROLES } from '#lib/equipment/model.ts';
import type { AvailabilityAsked } from '#lib/services/stock/open-availability.ts';
import type { SearchParams } from './enquiry-list-address.ts';

/** Reads what the timeline shows from the address; what cannot be read falls back to the usual. */
export function readAvailabilityAddress(params: SearchParams): AvailabilityAsked {
  const text = (key: string): string => {
    const value = params[key];
    return typeof value === 'string' ? value.slice(0, 20) : '';
  };
  return {
    from: text('from'),
    role: ROLES.find((role) => role === text('role')) ?? 'drive',
    depot: text('depot'),
    hireDays: Number(text('hire')) || 1,
  };
}

interface Address {
  readonly asked: Omit<AvailabilityAsked, 'role'> & { readonly role?: string };
  readonly path: string;
  readonly change: Readonly<Record<string, string>>;
}

export function availabilityAddress({ asked, path, change }: Address): string {
  const { from, role = '', depot, hireDays } = asked;
  const said = { from, role, depot, hire: hireDays === 1 ? '' : String(hireDays), ...change };
  const query = new URLSearchParams(Object.entries(said).filter(([, value]) => value !== ''));
  return query.size === 0 ? path : `${path}?${query}`;
}
