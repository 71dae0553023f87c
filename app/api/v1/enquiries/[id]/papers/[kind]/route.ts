import { asking } from '#app/_lib/asking.ts';
import { file, idOf, problem } from '#app/_lib/respond.ts';
import { draftPaper } from '#lib/services/quotes/draft-paper.ts';

interface PaperParams {
  readonly params: Promise<{ readonly id: string; readonly kind: string }>;
}

export async function GET(_request: Request, { params }: PaperParams): Promise<Response> {
  const { id, kind } = await params;
  const paper = await draftPaper(await asking(), { enquiryId: idOf(id), kind });
  if (!paper.ok) return problem(paper);
  return file(paper.value);
}
