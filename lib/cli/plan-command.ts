/*
 * `plan`: a list to plans, price and papers.
 * Invariant: exit status 0 when every readable line is served, 3 when some are not, 2 for unusable input.
 * Not here: the chain itself (../planning/work-out.ts).
 * Read next: answer.ts.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { workOut } from '#lib/planning/work-out.ts';
import { today } from '#lib/services/context.ts';
import { NO_TERMS_AGREED } from '#lib/services/customers/customer-facts.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { PAPER_KINDS, type PapersInput, paperOf } from '#lib/services/quotes/papers-of.ts';
import { priceOutcome } from '#lib/services/quotes/price-outcome.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { jsonText, planAnswer } from './answer.ts';
import type { Options } from './arguments.ts';
import { planInput } from './plan-input.ts';
import { planSummary } from './plan-summary.ts';
import { readInput } from './read-input.ts';

export async function planCommand(options: Options): Promise<number> {
  const started = performance.now();
  const read = await readInput(options);
  if (!read.ok) {
    process.stderr.write(`${read.reason.sentence}\n`);
    return 2;
  }
  const { context, taken, site } = read.value;
  const input = planInput(read.value);
  const intake_ms = performance.now() - started;
  const worked = await workOut(input, { onNote: (note) => process.stderr.write(`${note}\n`) });
  const outcome = worked.plans.find(({ preference }) => preference === options.prefer);
  if (!outcome) throw new Error(`No plan was made for ${options.prefer}.`);
  const wrong = worked.plans.flatMap((plan) => plan.discrepancies);
  if (wrong.length > 0) {
    process.stderr.write(
      `The independent check did not agree with the plan, so it is not given out:\n${wrong.slice(0, 10).join('\n')}\n`,
    );
    return 1;
  }
  const house = houseFacts(context);
  const papers: PapersInput = {
    number: 'Draft',
    issuedOn: today(context),
    system: options.units,
    house,
    customer: { name: 'To be named', address: [] },
    title: basename(options.list, extname(options.list)),
    site,
    models: input.models,
    lines: input.lines,
    worked,
    outcome,
    price: priceOutcome({ house, models: input.models, site, outcome, agreed: NO_TERMS_AGREED }),
    serials: {},
  };
  const answer = planAnswer({ taken, papers, intake_ms });
  if (options.out !== undefined) await writePapers(options.out, papers, answer);
  process.stdout.write(options.json ? `${jsonText(answer)}\n` : `${planSummary({ taken, papers })}\n`);
  const asked = input.lines.reduce((sum, line) => sum + line.qty, 0);
  return outcome.fleet.served === asked && taken.counts.refused === 0 ? 0 : 3;
}

async function writePapers(folder: string, papers: PapersInput, answer: unknown): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const kind of PAPER_KINDS) {
    await writeFile(join(folder, `${kind}.pdf`), await drawPaper(paperOf(kind, papers)));
    process.stderr.write(`${join(folder, `${kind}.pdf`)}\n`);
  }
  await writeFile(join(folder, 'plan.json'), `${jsonText(answer, 2)}\n`);
}
