'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { HOUSE_AREAS } from './house-areas.ts';

/** The areas twice: as a row where there is room, as a menu that opens without script where there is not; CSS shows one. */
export function HouseNav() {
  const here = usePathname();
  return (
    <>
      <details className="area-menu" key={here}>
        <summary>{areaOf(here)?.label ?? 'Menu'}</summary>
        <AreaLinks here={here} />
      </details>
      <AreaLinks here={here} />
    </>
  );
}

function AreaLinks({ here }: { readonly here: string }) {
  const current = areaOf(here);
  return (
    <nav className="areas" aria-label="Areas">
      {HOUSE_AREAS.map((area) => (
        <Link
          key={area.href}
          href={area.href}
          aria-current={area !== current ? undefined : here === area.href ? 'page' : 'true'}
        >
          {area.label}
        </Link>
      ))}
    </nav>
  );
}

function areaOf(here: string) {
  return HOUSE_AREAS.find(({ href }) => here === href || (href !== '/' && here.startsWith(`${href}/`)));
}
