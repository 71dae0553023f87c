interface Asked {
  readonly method: string;
  readonly headers: Pick<Headers, 'get'>;
}

const READS: readonly string[] = ['GET', 'HEAD', 'OPTIONS'];

/**
 * Whether a browser was made by another site to change something. A browser always says where a change comes from;
 * a program that is no browser says nothing and carries no cookie by accident.
 */
export function isFromElsewhere({ method, headers }: Asked): boolean {
  if (READS.includes(method)) return false;
  const site = headers.get('sec-fetch-site');
  if (site === 'cross-site' || site === 'same-site') return true;
  const origin = headers.get('origin');
  if (origin === null) return false;
  if (!URL.canParse(origin)) return true;
  const hosts = [headers.get('host'), headers.get('x-forwarded-host')];
  return !hosts.includes(new URL(origin).host);
}
