/**
 * The day so many days from today, as YYYY-MM-DD. A story that asks what is free takes days on which no other story takes anything,
 * and within a year: later than that the tests of many units are no longer in force.
 */
export function dayIn(days: number): string {
  return new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
}
