import { hirePaths, inHire, refusedSaid } from '#app/_lib/hire-paths.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { beginOrder } from '#lib/services/self-service/begin-order.ts';
import { formIn, listIn, textsIn } from '../_blocks/form-texts.ts';
import { givenBack } from '../_blocks/given-back.ts';

/** The first form: makes the order with its first valve or its list, and leads to it. */
export async function POST(request: Request) {
  const { context, address, language } = await strangerAsks();
  const sent = await formIn(request);
  if (!sent.ok) return inHire(hirePaths.start, refusedSaid(sent.reason));
  const form = sent.value;
  const fields = textsIn(form);
  const begun = await beginOrder(context, {
    address,
    language,
    fields,
    list: form.get('what') === 'list' ? await listIn(form) : null,
  });
  if (!begun.ok) return inHire(hirePaths.start, { ...givenBack(fields), ...refusedSaid(begun.reason) });
  const { token, lineId, listId } = begun.value;
  if (listId !== null) return inHire(hirePaths.list(token, listId));
  return inHire(lineId === null ? hirePaths.order(token) : hirePaths.valve(token, lineId));
}
