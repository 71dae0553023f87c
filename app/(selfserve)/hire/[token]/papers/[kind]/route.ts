import { hirePaths, inHire, refusedSaid } from '#app/_lib/hire-paths.ts';
import { file } from '#app/_lib/respond.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { readOrderPaper } from '#lib/services/self-service/order-papers.ts';

interface PaperParams {
  readonly params: Promise<{ readonly token: string; readonly kind: string }>;
}

/** A paper of the order; one that is not there leads to the page that says so. */
export async function GET(_request: Request, { params }: PaperParams) {
  const { context, address, language } = await strangerAsks();
  const { token, kind } = await params;
  const paper = await readOrderPaper(context, { token, address, kind, language });
  return paper.ok ? file(paper.value) : inHire(hirePaths.order(token), refusedSaid(paper.reason));
}
