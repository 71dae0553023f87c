/*
 * The template of a valve schedule to download.
 * Invariant: it imports without a problem.
 * Not here: what the columns mean (lib/intake).
 * Read next: ../intake/template.ts.
 */
import { templateCsv } from '#lib/intake/template.ts';

export function listTemplate(): string {
  return templateCsv();
}
