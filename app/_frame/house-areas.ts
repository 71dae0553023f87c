import type { ActorRole } from '#lib/services/context.ts';

/** The places of the house in the order of the header; a new area is one row here. */
export interface HouseArea {
  readonly href: string;
  readonly label: string;
  readonly roles: readonly ActorRole[];
}

const DESK: readonly ActorRole[] = ['desk', 'administrator'];
const STAFF: readonly ActorRole[] = ['desk', 'yard', 'administrator'];

const HOUSE_AREAS: readonly HouseArea[] = [
  { href: '/', label: 'Home', roles: DESK },
  { href: '/enquiries', label: 'Enquiries', roles: DESK },
  { href: '/customers', label: 'Customers', roles: DESK },
  { href: '/yard', label: 'Yard', roles: STAFF },
  { href: '/equipment', label: 'Equipment', roles: STAFF },
  { href: '/rules', label: 'Rules', roles: STAFF },
  { href: '/house', label: 'House', roles: STAFF },
  { href: '/help', label: 'Measuring', roles: [...STAFF, 'contractor'] },
];

/** Only what the person may open is offered. */
export function areasFor(role: ActorRole): readonly HouseArea[] {
  return HOUSE_AREAS.filter(({ roles }) => roles.includes(role));
}
