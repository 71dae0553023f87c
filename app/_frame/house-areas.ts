/** The places of the Desk in the order of the header; a new area is one row here. */
export interface HouseArea {
  readonly href: string;
  readonly label: string;
}

export const HOUSE_AREAS: readonly HouseArea[] = [
  { href: '/', label: 'Home' },
  { href: '/enquiries', label: 'Enquiries' },
  { href: '/customers', label: 'Customers' },
  { href: '/equipment', label: 'Equipment' },
  { href: '/rules', label: 'Rules' },
  { href: '/help', label: 'Measuring' },
];
