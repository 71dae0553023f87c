import { cookies, headers } from 'next/headers';
import type { SessionCookie } from '#lib/services/access/sign-in.ts';

/** Gives the browser its session: out of reach of scripts and of other sites, and over TLS only where it came by TLS. */
export async function keepSession({ name, value, maxAge_s }: SessionCookie): Promise<void> {
  const secure = (await headers()).get('x-forwarded-proto') === 'https';
  (await cookies()).set(name, value, { httpOnly: true, sameSite: 'lax', path: '/', secure, maxAge: maxAge_s });
}

export async function forgetSession(): Promise<void> {
  const jar = await cookies();
  for (const { name } of jar.getAll()) if (name.endsWith('session_token')) jar.delete(name);
}

/** Where the request came from: the last address that was added on the way is the one that our own server saw. */
export async function addressAsking(): Promise<string> {
  const seen = (await headers()).get('x-forwarded-for') ?? '';
  return seen.split(',').at(-1)?.trim() || 'unknown';
}
