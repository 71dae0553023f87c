export interface BookingParams {
  readonly params: Promise<{ readonly number: string }>;
}
