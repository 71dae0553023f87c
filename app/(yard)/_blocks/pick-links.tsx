import Link from 'next/link';
import type { YardMovement } from '#lib/services/yard/open-yard.ts';

/** Where a booking that is still here is worked on. */
export function PickLinks({ row }: { readonly row: YardMovement }) {
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
    </span>
  );
}
