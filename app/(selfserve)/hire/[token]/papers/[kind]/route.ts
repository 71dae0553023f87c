import { file, problem } from '#app/_lib/respond.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { readOrderPaper } from '#lib/services/self-service/order-papers.ts';

interface PaperParams {
  readonly params: Promise<{ readonly token: string; readonly kind: string }>;
}

/** The frozen quote, or its summary in the language of the reader. */
export async function GET(_request: Request, { params }: PaperParams) {
  const { context, address, language } = await strangerAsks();
  const { token, kind } = await params;
  const paper = await readOrderPaper(context, { token, address, kind, language });
  return paper.ok ? file(paper.value) : problem(paper);
}
