/*
 * Tells the house the address that a request really came from; the server is preloaded with it.
 * Invariant: what a caller writes into x-forwarded-for counts only behind a proxy that the house was told of.
 * Not here: what is done with the address (lib/services/access/throttle.ts).
 * Read next: start.mjs. `KITWRIGHT_BEHIND_PROXY=1` says that a proxy of one's own adds the address.
 */
import { Server } from 'node:http';

const isBehindProxy = process.env.KITWRIGHT_BEHIND_PROXY === '1';
const emit = Server.prototype.emit;

if (!isBehindProxy) {
  Server.prototype.emit = function emitWithTrueAddress(event, ...rest) {
    const [request] = rest;
    if (event === 'request' && request?.headers !== undefined) {
      request.headers['x-forwarded-for'] = request.socket?.remoteAddress ?? 'unknown';
      delete request.headers['x-forwarded-host'];
      delete request.headers['x-forwarded-proto'];
    }
    return emit.call(this, event, ...rest);
  };
}
