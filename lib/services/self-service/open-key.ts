/*
 * Keys of customers' programs: made and revoked by the Desk, opened by whoever sends one.
 * Invariant: a key is answered once, when it is made; a revoked key opens nothing, and one key opens its own customer's orders only.
 * Not here: what an order allows (order-stage.ts).
 * Read next: open-link.ts.
 */
import { type ApiKeyRow, changeApiKey, findApiKey, insertApiKey, keysOfCustomer } from '#db/queries/api-keys.ts';
import { findCustomer } from '#db/queries/customers.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { noSuchCustomer } from '#lib/services/customers/save-customer.ts';
import { logChange } from '#lib/services/log-change.ts';
import { isSecret, newSecret, secretHash } from './secret.ts';
import { mayTurn, takeTurn } from './self-throttle.ts';

const KEY_HEAD = 'kw_';
const NAME_CHARACTERS = 80;

export function isKey(token: string): boolean {
  return token.startsWith(KEY_HEAD);
}

export function openKey(
  context: Context,
  { token, address }: { readonly token: string; readonly address: string },
): Result<ApiKeyRow> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const wrong = { turn: 'use a wrong key', who: address } as const;
  const free = mayTurn(context, wrong);
  if (!free.ok) return free;
  const secret = token.slice(KEY_HEAD.length);
  const row = isKey(token) && isSecret(secret) ? findApiKey(context.database.db, secretHash(secret)) : undefined;
  if (row === undefined || row.revoked_at !== '') {
    takeTurn(context, wrong);
    return failed({ code: 'no-key', sentence: 'Send a key of the house as “Authorization: Bearer kw_…”.' });
  }
  const turn = takeTurn(context, { turn: 'ask by key', who: `key ${row.id}` });
  if (!turn.ok) return turn;
  changeApiKey(context.database.db, { id: row.id, set: { last_used_at: timestamp(context) } });
  return ok(row);
}

export interface KeyView {
  readonly id: number;
  readonly name: string;
  readonly shownEnd: string;
  readonly createdAt: string;
  readonly createdBy: string;
  readonly revokedAt: string;
  readonly lastUsedAt: string;
}

export function listKeys(context: Context, customerId: number): Result<readonly KeyView[]> {
  const allowed = authorise(context, 'read customers');
  if (!allowed.ok) return allowed;
  return ok(
    keysOfCustomer(context.database.db, customerId).map((row) => ({
      id: row.id,
      name: row.name,
      shownEnd: row.shown_end,
      createdAt: row.created_at,
      createdBy: row.created_by,
      revokedAt: row.revoked_at,
      lastUsedAt: row.last_used_at,
    })),
  );
}

/** The key is answered this once. */
export function makeKey(
  context: Context,
  { customerId, name }: { readonly customerId: number; readonly name: string },
): Result<{ readonly key: string }> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  if (findCustomer(context.database.db, customerId) === undefined) return noSuchCustomer();
  const called = name.trim().slice(0, NAME_CHARACTERS);
  if (called === '')
    return failed({ code: 'name-missing', sentence: 'Give the key a name, such as that of the program.' });
  const { secret, hash } = newSecret();
  return context.database.db.transaction((tx) => {
    insertApiKey(tx, {
      customer_id: customerId,
      name: called,
      key_hash: hash,
      shown_end: secret.slice(-4),
      created_at: timestamp(context),
      created_by: actingPerson(context).name,
    });
    logChange(tx, {
      context,
      deed: { action: 'key made', subject: `customer ${customerId}`, detail: { name: called } },
    });
    return ok({ key: `${KEY_HEAD}${secret}` });
  });
}

export function revokeKey(
  context: Context,
  { customerId, keyId }: { readonly customerId: number; readonly keyId: number },
): Result<true> {
  const allowed = authorise(context, 'change customers');
  if (!allowed.ok) return allowed;
  const row = keysOfCustomer(context.database.db, customerId).find(({ id }) => id === keyId);
  if (row === undefined) return failed({ code: 'no-such-key', sentence: 'That key is not this customer’s.' });
  return context.database.db.transaction((tx) => {
    if (row.revoked_at === '') changeApiKey(tx, { id: keyId, set: { revoked_at: timestamp(context) } });
    logChange(tx, {
      context,
      deed: { action: 'key revoked', subject: `customer ${customerId}`, detail: { name: row.name } },
    });
    return ok(true as const);
  });
}
