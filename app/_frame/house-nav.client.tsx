'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { HouseArea } from './house-areas.ts';

interface HouseNavProps {
  readonly areas: readonly HouseArea[];
}

/** The areas twice: as a row where there is room, as a menu that opens without script where there is not; CSS shows one. */
export function HouseNav({ areas }: HouseNavProps) {
  const here = usePathname();
  return (
    <>
      <details className="area-menu" key={here}>
        <summary>{areaOf({ areas, here })?.label ?? 'Menu'}</summary>
        <AreaLinks areas={areas} here={here} />
      </details>
      <AreaLinks areas={areas} here={here} />
    </>
  );
}

interface Here extends HouseNavProps {
  readonly here: string;
}

function AreaLinks({ areas, here }: Here) {
  const current = areaOf({ areas, here });
  return (
    <nav className="areas" aria-label="Areas">
      {areas.map((area) => (
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

function areaOf({ areas, here }: Here) {
  return areas.find(({ href }) => here === href || (href !== '/' && here.startsWith(`${href}/`)));
}
