'use client';

import Link from 'next/link';
import { useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { AlikeView } from '#lib/services/customers/alike-customers.ts';

interface AlreadyHereProps {
  readonly kind: 'customer' | 'site' | 'contact';
  readonly typed: { readonly name: string; readonly email?: string; readonly telephone?: string };
  readonly customerId?: number;
  /** The one that is being edited itself. */
  readonly self?: number;
}

const WAIT_MS = 250;

/** Tells who is here already while somebody is typed; it never stands in the way of saving. */
export function AlreadyHere({ kind, typed, customerId = 0, self = 0 }: AlreadyHereProps) {
  const [found, setFound] = useState<readonly AlikeView[]>([]);
  const { name, email = '', telephone = '' } = typed;
  useEffect(() => {
    if (name.trim() === '' && email === '' && telephone === '') {
      setFound([]);
      return;
    }
    let isNewest = true;
    const query = new URLSearchParams({
      kind,
      name,
      email,
      telephone,
      customer: String(customerId),
      self: String(self),
    });
    const wait = setTimeout(async () => {
      const sent = await send<readonly AlikeView[]>({ method: 'GET', path: `/api/v1/customers/alike?${query}` });
      if (isNewest && sent.ok) setFound(sent.value);
    }, WAIT_MS);
    return () => {
      isNewest = false;
      clearTimeout(wait);
    };
  }, [kind, name, email, telephone, customerId, self]);
  return (
    <div aria-live="polite">
      {found.length > 0 && (
        <div className="notice warning">
          <p>Already here?</p>
          <ul>
            {found.map((one) => (
              <li key={one.id}>
                <Link href={hrefOf(kind, one)}>{one.name}</Link>
                {one.of !== '' && `, ${one.of}`}: {one.why}
                {one.archived === 'yes' && ', put away'}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

function hrefOf(...[kind, { id, customerId }]: readonly [AlreadyHereProps['kind'], AlikeView]): string {
  if (kind === 'site') return `/customers/${customerId}/sites/${id}`;
  return kind === 'contact' ? `/customers/${customerId}/contacts` : `/customers/${customerId}`;
}
