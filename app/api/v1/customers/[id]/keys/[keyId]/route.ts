import { asking } from '#app/_lib/asking.ts';
import { idOf, respond } from '#app/_lib/respond.ts';
import { revokeKey } from '#lib/services/self-service/open-key.ts';

interface KeyParams {
  readonly params: Promise<{ readonly id: string; readonly keyId: string }>;
}

export async function DELETE(_request: Request, { params }: KeyParams) {
  const context = await asking();
  const { id, keyId } = await params;
  return respond(revokeKey(context, { customerId: idOf(id), keyId: idOf(keyId) }));
}
