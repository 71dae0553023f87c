import { hirePaths, inHire, refusedSaid } from '#app/_lib/hire-paths.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { formIn } from '../../../_blocks/form-texts.ts';
import { orderDeed } from '../../../_blocks/order-deeds.ts';

interface DeedParams {
  readonly params: Promise<{ readonly token: string; readonly deed: string }>;
}

/** Every form of an order is sent here; what it does follows from the address, and then a page is asked for anew. */
export async function POST(request: Request, { params }: DeedParams) {
  const { context, address, language } = await strangerAsks();
  const { token, deed } = await params;
  const sent = await formIn(request);
  if (!sent.ok) return inHire(hirePaths.order(token), refusedSaid(sent.reason));
  const { to, result } = await orderDeed(context, { asked: { token, address }, language, deed, form: sent.value });
  return inHire(to, result.ok ? {} : refusedSaid(result.reason));
}

/** An address that was kept of a form leads to its order. */
export async function GET(_request: Request, { params }: DeedParams) {
  await strangerAsks();
  return inHire(hirePaths.order((await params).token));
}
