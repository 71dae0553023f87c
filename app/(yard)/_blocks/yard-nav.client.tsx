'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { YARD_PLACES } from './yard-places.ts';

/** The places of the yard, wide enough for a cold hand. */
export function YardNav() {
  const here = usePathname();
  return (
    <nav className="tabs yard-tabs" aria-label="Yard">
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
