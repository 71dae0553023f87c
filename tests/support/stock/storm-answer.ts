/*
 * What the clients of the storm of bookings are told, and what each writes down of every answer.
 */

/** Everything that the storm is about, as it stands before the first ask. */
export interface StormHouse {
  /** The two models of which few units are left, with their serial numbers. */
  readonly models: readonly StormModel[];
  /** All models of the kit that the quotes are about; the two are among them. */
  readonly kit: readonly StormModel[];
  readonly quotes: readonly StormQuote[];
}

export interface StormModel {
  readonly number: string;
  readonly serials: readonly string[];
}

/** An issued quote for one buried valve, whose kit needs one unit of each of the few models, and others besides. */
export interface StormQuote {
  readonly id: number;
  readonly enquiryId: number;
  readonly startsOn: string;
  readonly endsBefore: string;
  /** Units with serial numbers that its kit consists of. */
  readonly units: number;
}

interface Window {
  readonly startsOn: string;
  readonly endsBefore: string;
}

export type StormAsk =
  | ({ readonly deed: 'book'; readonly count: number } & Window)
  | ({ readonly deed: 'accept'; readonly quote: number; readonly count: number } & Window)
  | { readonly deed: 'extend'; readonly booking: string; readonly endsBefore: string }
  | { readonly deed: 'swap'; readonly booking: string; readonly serial: string; readonly replacement: string }
  | { readonly deed: 'cancel'; readonly booking: string };

export interface StormAnswer {
  readonly client: number;
  readonly asked: StormAsk;
  /** Code of the refusal; empty where it was done. */
  readonly code: string;
  /** Number of the booking and serial numbers, where it was done. */
  readonly number?: string;
  readonly serials?: readonly string[];
}
