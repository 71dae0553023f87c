/** Writes the four sample papers as PDF for a person to look at: `node --import tsx tests/support/draw-sample-papers.ts FOLDER`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { calculationPaper } from '#lib/documents/calculation-paper.ts';
import { packingPaper } from '#lib/documents/packing-paper.ts';
import { quotePaper } from '#lib/documents/quote-paper.ts';
import { sitePaper } from '#lib/documents/site-paper.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import {
  longPlan,
  SAMPLE_CALCULATION,
  SAMPLE_CONTEXT,
  SAMPLE_LINES,
  SAMPLE_PACKING,
  SAMPLE_QUOTE,
} from './sample-plan.ts';

const folder = process.argv[2] ?? '.reports/papers';
mkdirSync(folder, { recursive: true });
const long = longPlan({ lines: 1461, classes: 60 });
const papers = {
  quote: () => quotePaper(SAMPLE_QUOTE),
  'packing-list': () => packingPaper(SAMPLE_PACKING),
  'site-sheet': () => sitePaper({ context: SAMPLE_CONTEXT, lines: SAMPLE_LINES }),
  calculation: () => calculationPaper(SAMPLE_CALCULATION),
  'long-quote': () => quotePaper({ ...SAMPLE_QUOTE, lines: long }),
  'long-site-sheet': () => sitePaper({ context: SAMPLE_CONTEXT, lines: long }),
  'long-calculation': () => calculationPaper({ context: SAMPLE_CONTEXT, lines: long }),
};
for (const [name, make] of Object.entries(papers)) {
  if (process.argv[3] !== undefined && !name.includes(process.argv[3])) continue;
  const started = performance.now();
  const paper = make();
  const made = performance.now();
  const bytes = await drawPaper(paper);
  writeFileSync(path.join(folder, `${name}.pdf`), bytes);
  console.log(
    `${name}: view model ${Math.round(made - started)} ms, drawing ${Math.round(performance.now() - made)} ms, ${bytes.length} bytes`,
  );
}
