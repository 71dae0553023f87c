/** The places of the yard in the order of its row of tabs; a new place is one row here. */
export interface YardPlace {
  readonly href: string;
  readonly label: string;
}

export const YARD_PLACES: readonly YardPlace[] = [
  { href: '/yard', label: 'Today' },
  { href: '/yard/bookings', label: 'Bookings' },
  { href: '/yard/availability', label: 'Availability' },
  { href: '/yard/stock', label: 'Stock' },
  { href: '/yard/stocktake', label: 'Stocktake' },
  { href: '/yard/transfers', label: 'Transfers' },
  { href: '/yard/labels', label: 'Labels' },
  { href: '/yard/work-orders', label: 'Work orders' },
];
