import { asking } from '#app/_lib/asking.ts';
import { file, idOf, problem } from '#app/_lib/respond.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';

interface PaperParams {
  readonly params: Promise<{ readonly id: string; readonly kind: string }>;
}

/** The frozen bytes of an issued paper. */
export async function GET(_request: Request, { params }: PaperParams): Promise<Response> {
  const { id, kind } = await params;
  const paper = readPaper(await asking(), { quoteId: idOf(id), kind });
  if (!paper.ok) return problem(paper);
  return file(paper.value);
}
