import { statusOf } from './respond.ts';

interface Said {
  status?: number;
  retryAfter_s?: number;
}

declare global {
  /** Made by lib/launch/answer-status.mjs before the server begins; absent where a server runs without it. */
  var kitwrightAnswers: { getStore(): Said | undefined } | undefined;
}

interface Refusal {
  readonly code: string;
  readonly retry_after_s?: number;
}

/** What a page refuses is refused by its status too: 404 and 410 for links, 429 with the seconds to wait, 413 for what is too large. */
export function answerAsRefused({ code, retry_after_s }: Refusal): void {
  const said = globalThis.kitwrightAnswers?.getStore();
  const status = statusOf(code);
  if (said === undefined || !TOLD.has(status)) return;
  said.status = status;
  if (retry_after_s !== undefined) said.retryAfter_s = retry_after_s;
}

/** Anything else is a page like any other, with a sentence on it. */
const TOLD: ReadonlySet<number> = new Set([404, 410, 413, 429, 503]);
