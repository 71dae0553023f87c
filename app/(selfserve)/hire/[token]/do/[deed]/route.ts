import { hirePaths, inHire } from '#app/_lib/hire-paths.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { orderDeed } from '../../../_blocks/order-deeds.ts';

interface DeedParams {
  readonly params: Promise<{ readonly token: string; readonly deed: string }>;
}

/** Every form of an order is sent here; what it does follows from the address, and then a page is asked for anew. */
export async function POST(request: Request, { params }: DeedParams) {
  const { context, address } = await strangerAsks();
  const { token, deed } = await params;
  const { to, result } = await orderDeed(context, { asked: { token, address }, deed, form: await request.formData() });
  return inHire(to, result.ok ? {} : { refused: result.reason.code });
}

/** An address that was kept of a form leads to its order. */
export async function GET(_request: Request, { params }: DeedParams) {
  await strangerAsks();
  return inHire(hirePaths.order((await params).token));
}
