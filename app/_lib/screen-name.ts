/** Names the browser window that asks, so that it knows its own changes among everybody's. */
export const SCREEN_HEADER = 'x-screen';

let own = '';

/** A name made up once a window; in a window that was duplicated it is made anew. */
export function screenName(): string {
  if (own !== '') return own;
  own = Array.from(crypto.getRandomValues(new Uint8Array(9)), (byte) => byte.toString(36).padStart(2, '0')).join('');
  return own;
}
