import type { UserRole } from '#lib/services/context.ts';

/** People of an invented house, one a role, for tests that sign in. */
export const PEOPLE = {
  desk: { name: 'Dora Desk', email: 'desk@house.example', role: 'desk' },
  yard: { name: 'Yann Yard', email: 'yard@house.example', role: 'yard' },
  administrator: { name: 'Ada Admin', email: 'ada@house.example', role: 'administrator' },
  contractor: { name: 'Conrad Caller', email: 'contractor@house.example', role: 'contractor' },
} as const satisfies Readonly<
  Record<UserRole, { readonly name: string; readonly email: string; readonly role: UserRole }>
>;
