import { programAsks } from '#app/_lib/program.ts';
import { file, idOf, problem } from '#app/_lib/respond.ts';
import { readOrderPaper } from '#lib/services/self-service/order-papers.ts';

interface PaperParams {
  readonly params: Promise<{ readonly id: string; readonly kind: string }>;
}

export async function GET(_request: Request, { params }: PaperParams) {
  const { context, sent } = await programAsks();
  const { id, kind } = await params;
  const paper = await readOrderPaper(context, { ...sent, enquiryId: idOf(id), kind, language: 'en' });
  return paper.ok ? file(paper.value) : problem(paper);
}
