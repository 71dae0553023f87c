/*
 * Worker entry that works out what is worth asking about a valve, so that strangers' questions freeze nobody.
 * Invariant: one answer for each order, under its number; a failure is told as a sentence and ends nothing.
 * Not here: starting it and waiting (ask.ts).
 * Read next: ask.ts, ../questions/next-question.ts.
 */
import { parentPort } from 'node:worker_threads';
import type { Site } from '#lib/duty/site.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { SelfServiceBounds } from '#lib/questions/hand-over.ts';
import { type Asking, askLine } from '#lib/questions/next-question.ts';
import type { Told } from '#lib/questions/question.ts';

export interface AskJob {
  readonly told: Told;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly bounds: SelfServiceBounds;
}

export interface AskOrder {
  readonly id: number;
  readonly job: AskJob;
}

export type AskAnswer =
  | { readonly id: number; readonly kind: 'asked'; readonly asking: Asking }
  | { readonly id: number; readonly kind: 'trouble'; readonly trouble: string };

parentPort?.on('message', ({ id, job }: AskOrder) => {
  const say = (answer: AskAnswer): void => parentPort?.postMessage(answer);
  try {
    say({ id, kind: 'asked', asking: askLine(job) });
  } catch (error) {
    say({ id, kind: 'trouble', trouble: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
