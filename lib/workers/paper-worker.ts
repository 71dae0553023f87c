/*
 * Worker entry that draws papers, so that nothing else waits while a long one is laid out.
 * Invariant: one answer for every message, with the message's id.
 * Not here: starting and sharing the worker (draw-paper.ts).
 * Read next: draw-paper.ts, ../pdf/render-paper.ts.
 */
import { parentPort } from 'node:worker_threads';
import type { Paper } from '#lib/documents/papers/paper.ts';
import { renderPaper } from '#lib/pdf/render-paper.ts';

export interface PaperRequest {
  readonly id: number;
  readonly paper: Paper;
}

export type PaperAnswer =
  | { readonly id: number; readonly bytes: Uint8Array }
  | { readonly id: number; readonly trouble: string };

parentPort?.on('message', (request: PaperRequest) => {
  void answer(request);
});

async function answer(request: PaperRequest): Promise<void> {
  try {
    const bytes = await renderPaper(request.paper);
    parentPort?.postMessage({ id: request.id, bytes } satisfies PaperAnswer);
  } catch (error) {
    parentPort?.postMessage({
      id: request.id,
      trouble: error instanceof Error ? (error.stack ?? error.message) : String(error),
    } satisfies PaperAnswer);
  }
}
