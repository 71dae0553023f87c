/** What the addresses of the yard's interface carry. */
export interface BookingParams {
  readonly params: Promise<{ readonly number: string }>;
}
