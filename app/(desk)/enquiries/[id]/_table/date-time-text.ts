/** Day and time of a moment, as this browser's clock has it. */
export function dateTimeText(moment: string): string {
  return new Date(moment).toLocaleString(undefined, {
    ...{ day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' },
  });
}
