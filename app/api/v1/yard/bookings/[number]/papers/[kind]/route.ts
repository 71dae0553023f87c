import { asking } from '#app/_lib/asking.ts';
import { file, problem } from '#app/_lib/respond.ts';
import { failed } from '#lib/kernel/result.ts';
import { LOAD_PAPERS, loadPaper } from '#lib/services/yard/packing/load-papers.ts';

interface PaperParams {
  readonly params: Promise<{ readonly number: string; readonly kind: string }>;
}

export async function GET(_request: Request, { params }: PaperParams): Promise<Response> {
  const asked = await params;
  const context = await asking();
  const kind = LOAD_PAPERS.find((one) => one === asked.kind);
  if (kind === undefined)
    return problem(failed({ code: 'no-such-paper', sentence: `There is no paper “${asked.kind}” of a load.` }));
  const paper = await loadPaper(context, { number: asked.number, kind });
  return paper.ok ? file(paper.value) : problem(paper);
}
