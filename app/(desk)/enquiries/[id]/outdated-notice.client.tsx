'use client';

import { usePathname, useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import type { ChangeView } from '#lib/services/schedule/read-changes.ts';
import { useLive } from './live-enquiry.client.tsx';

/** Says on the screens beside the table when somebody changed what they show; the table follows by itself. */
export function OutdatedNotice({ enquiryId }: { readonly enquiryId: number }) {
  const { follow, others } = useLive();
  const router = useRouter();
  const path = usePathname();
  const [changes, setChanges] = useState<{ readonly path: string; readonly seen: readonly ChangeView[] }>();
  useEffect(
    () =>
      follow((more) =>
        setChanges((before) => ({ path, seen: [...(before?.path === path ? before.seen : []), ...more] })),
      ),
    [follow, path],
  );
  const seen = changes?.path === path ? changes.seen : [];
  const isTable = path === `/enquiries/${enquiryId}`;
  return (
    <>
      {!isTable && others.length > 0 && (
        <p className="soft" role="status">
          {others.join(', ')} {others.length === 1 ? 'has' : 'have'} this enquiry open too.
        </p>
      )}
      {!isTable && seen.length > 0 && (
        <div className="notice warning" role="status">
          <p>
            {[...new Set(seen.map(({ who }) => who))].join(', ')} changed this enquiry since this screen was opened:{' '}
            {[...new Set(seen.map(({ told }) => told))].slice(0, 3).join('; ')}. What you typed here stays until you
            load it again.
          </p>
          <button
            type="button"
            onClick={() => {
              setChanges(undefined);
              router.refresh();
            }}
          >
            Show it as it is now
          </button>
        </div>
      )}
    </>
  );
}
