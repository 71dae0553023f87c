/*
 * Lets a page that cannot be shown answer with the status that is true of it; the server is preloaded with it.
 * Invariant: a page says it before its first byte, and only the answer to its own request is changed.
 * Not here: which status that is (app/_lib/answer-status.ts). Routes set theirs by themselves.
 * Read next: start.mjs.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import { Server, ServerResponse } from 'node:http';

const answers = new AsyncLocalStorage();
globalThis.kitwrightAnswers = answers;

const emit = Server.prototype.emit;
Server.prototype.emit = function emitWithAnswer(event, ...rest) {
  if (event !== 'request') return emit.call(this, event, ...rest);
  const said = {};
  const [, response] = rest;
  if (response !== undefined) response.kitwrightSaid = said;
  return answers.run(said, () => emit.call(this, event, ...rest));
};

const writeHead = ServerResponse.prototype.writeHead;
ServerResponse.prototype.writeHead = function writeHeadAsSaid(status, ...rest) {
  const said = this.kitwrightSaid;
  if (status !== 200 || said?.status === undefined) return writeHead.call(this, status, ...rest);
  if (said.retryAfter_s !== undefined) this.setHeader('retry-after', String(said.retryAfter_s));
  return writeHead.call(this, said.status, ...rest);
};
