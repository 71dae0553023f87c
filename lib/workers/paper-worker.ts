/*
 * Worker entry that draws papers and labels, so that nothing else waits while a long one is laid out.
 * Invariant: one answer for every message, with the message's id.
 * Not here: starting and sharing the worker (draw-paper.ts).
 * Read next: draw-paper.ts, ../pdf/render-paper.ts.
 */
import { parentPort } from 'node:worker_threads';
import type { CaseLabelSheet } from '#lib/documents/labels/case-label.ts';
import type { LabelSheet } from '#lib/documents/labels/label-sheet.ts';
import type { Paper } from '#lib/documents/papers/paper.ts';
import { renderCaseLabels } from '#lib/pdf/render-case-labels.ts';
import { renderLabels } from '#lib/pdf/render-labels.ts';
import { renderPaper } from '#lib/pdf/render-paper.ts';

/** What can be drawn: a paper, a sheet of labels, or the labels of packed cases. */
export type Drawable =
  | { readonly paper: Paper }
  | { readonly labels: LabelSheet }
  | { readonly caseLabels: CaseLabelSheet };

export type PaperRequest = Drawable & { readonly id: number };

export type PaperAnswer =
  | { readonly id: number; readonly bytes: Uint8Array }
  | { readonly id: number; readonly trouble: string };

parentPort?.on('message', (request: PaperRequest) => {
  void answer(request);
});

async function answer(request: PaperRequest): Promise<void> {
  try {
    const bytes = await drawn(request);
    parentPort?.postMessage({ id: request.id, bytes } satisfies PaperAnswer);
  } catch (error) {
    parentPort?.postMessage({
      id: request.id,
      trouble: error instanceof Error ? (error.stack ?? error.message) : String(error),
    } satisfies PaperAnswer);
  }
}

function drawn(request: PaperRequest): Promise<Uint8Array> {
  if ('paper' in request) return renderPaper(request.paper);
  return 'labels' in request ? renderLabels(request.labels) : renderCaseLabels(request.caseLabels);
}
