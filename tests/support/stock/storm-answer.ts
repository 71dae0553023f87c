/*
 * What a client of the storm of bookings writes down of each answer.
 */
export interface StormAnswer {
  readonly client: number;
  readonly asked:
    | { readonly count: number; readonly startsOn: string; readonly endsBefore: string }
    | { readonly gives: string };
  /** Code of the refusal; empty where it was done. */
  readonly code: string;
  readonly number?: string;
  readonly serials?: readonly string[];
}
