import Link from 'next/link';
import type { ReactNode } from 'react';
import type { HouseArea } from './house-areas.ts';
import { HouseMark } from './house-mark.tsx';
import { HouseNav } from './house-nav.client.tsx';

interface HouseHeaderProps {
  /** What the person may open. */
  readonly areas: readonly HouseArea[];
  /** The form that searches everything. */
  readonly search?: ReactNode;
  /** Units, who is signed in, help: what belongs to the person rather than to the place. */
  readonly end: ReactNode;
}

/** The header of every screen: house, areas, search, and what belongs to the person. */
export function HouseHeader({ areas, search, end }: HouseHeaderProps) {
  return (
    <header className="top">
      <Link className="house-name" href="/">
        <HouseMark />
        Kitwright
      </Link>
      <HouseNav areas={areas} />
      <div className="top-end">
        {search}
        {end}
      </div>
    </header>
  );
}
