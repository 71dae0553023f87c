/** Writes the sample papers as PDF for a person to look at: `node --import tsx tests/support/papers/draw-sample-papers.ts FOLDER [NAME] [us]`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { calculationPaper } from '#lib/documents/papers/calculation-paper.ts';
import { packingPaper } from '#lib/documents/papers/packing-paper.ts';
import { quotePaper } from '#lib/documents/papers/quote-paper.ts';
import { returnPaper } from '#lib/documents/papers/return-paper.ts';
import { sitePaper } from '#lib/documents/papers/site-paper.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import {
  longPlan,
  SAMPLE_CALCULATION,
  SAMPLE_CONTEXT,
  SAMPLE_LINES,
  SAMPLE_PACKING,
  SAMPLE_QUOTE,
} from './sample-plan.ts';
import { SAMPLE_RETURN } from './sample-return.ts';

const folder = process.argv[2] ?? '.reports/papers';
mkdirSync(folder, { recursive: true });
const long = longPlan({ lines: 1461, classes: 60 });
const context = process.argv[4] === 'us' ? ({ ...SAMPLE_CONTEXT, system: 'us' } as const) : SAMPLE_CONTEXT;
const papers = {
  quote: () => quotePaper({ ...SAMPLE_QUOTE, context }),
  'packing-list': () => packingPaper({ ...SAMPLE_PACKING, context }),
  'site-sheet': () => sitePaper({ context, lines: SAMPLE_LINES, crewDays: [] }),
  'return-note': () => returnPaper(SAMPLE_RETURN),
  calculation: () => calculationPaper({ ...SAMPLE_CALCULATION, context }),
  'long-quote': () => quotePaper({ ...SAMPLE_QUOTE, context, lines: long }),
  'long-site-sheet': () => sitePaper({ context, lines: long, crewDays: [] }),
  'long-calculation': () => calculationPaper({ context, lines: long }),
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
