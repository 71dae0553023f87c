import Link from 'next/link';
import type { ReactNode } from 'react';
import type { YardMovement } from '#lib/services/yard/open-yard.ts';

interface LinksProps {
  readonly row: YardMovement;
  /** What else can be done with it. */
  readonly children?: ReactNode;
}

/** Where a booking that is still here is worked on. */
export function PickLinks({ row, children }: LinksProps) {
  if (row.state === 'held') return <span className="mark">not confirmed</span>;
  return (
    <span className="tools">
      <Link
        className={row.state === 'picked' ? 'button' : 'button main'}
        href={`/yard/pick/${row.booking}`}
        aria-label={`Pick ${row.booking}`}
      >
        Pick
      </Link>
      <Link
        className={row.state === 'picked' ? 'button main' : 'button'}
        href={`/yard/pack/${row.booking}`}
        aria-label={`Pack ${row.booking}`}
      >
        Pack
      </Link>
      {children}
    </span>
  );
}
