'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEffect, useRef } from 'react';
import { YARD_PLACES } from './yard-places.ts';

/** The places of the yard, wide enough for a cold hand. */
export function YardNav() {
  const here = usePathname();
  const row = useRef<HTMLElement>(null);
  // On a telephone the row is pushed along: where one is stays in sight.
  useEffect(() => {
    const current = row.current?.querySelector<HTMLElement>('[aria-current]');
    if (row.current && current && here !== '')
      row.current.scrollLeft = current.offsetLeft - row.current.offsetLeft - 24;
  }, [here]);
  return (
    <nav ref={row} className="tabs yard-tabs" aria-label="Yard">
      {YARD_PLACES.map(({ href, label }) => (
        <Link key={href} href={href} aria-current={isAt({ href, here }) ? 'page' : undefined}>
          {label}
        </Link>
      ))}
    </nav>
  );
}

function isAt({ href, here }: { readonly href: string; readonly here: string }): boolean {
  return here === href || (href !== '/yard' && here.startsWith(`${href}/`));
}
