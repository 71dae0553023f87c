import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { openWalk } from '#lib/services/yard/picking/open-walk.ts';
import { WalkScreen } from './walk-screen.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Walk of the day' };

interface WalkSearch {
  readonly searchParams: Promise<{ readonly day?: string | string[]; readonly depot?: string | string[] }>;
}

export default async function WalkPage({ searchParams }: WalkSearch) {
  const { day, depot } = await searchParams;
  const walk = openWalk(await asking(), {
    day: typeof day === 'string' && isIsoDate(day) ? day : undefined,
    depot: typeof depot === 'string' ? depot : undefined,
  });
  if (!walk.ok) {
    return (
      <>
        <h1>Walk of the day</h1>
        <p className="notice refusal">{walk.reason.sentence}</p>
      </>
    );
  }
  return <WalkScreen view={walk.value} />;
}
