/*
 * What makes a valve the same valve at another visit: its site and its tag, written alike.
 * Invariant: signs, spaces and case do not matter; letters and digits, their order and where a number ends do.
 * Not here: whose valve it is (a record belongs to a customer).
 * Read next: known-valve.ts.
 */

/** `V-101`, `v 101` and `V101` are one valve; `1-01` and `10-1` are two, and so are `V-01` and `V-1`. Empty: no identity. */
export function tagKey(tag: string): string {
  return partsOf(tag)
    .flatMap((part) => part.match(/\p{N}+|[^\p{N}]+/gu) ?? [])
    .join('-');
}

/** `Sallow Vale, east district` and `SALLOW VALE (East District)` are one site. Empty: no identity. */
export function siteKey(site: string): string {
  return partsOf(site).join(' ');
}

function partsOf(text: string): readonly string[] {
  return (
    text
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toUpperCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  );
}
