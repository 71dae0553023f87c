import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { openPacking } from '#lib/services/yard/packing/open-packing.ts';
import { PackScreen } from './pack-screen.client.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata({ params }: BookingParams): Promise<Metadata> {
  return { title: `Pack ${(await params).number}` };
}

export default async function PackPage({ params }: BookingParams) {
  const { number } = await params;
  const packing = openPacking(await asking(), decodeURIComponent(number));
  if (!packing.ok) {
    return (
      <>
        <h1>Pack {number}</h1>
        <p className="notice refusal">{packing.reason.sentence}</p>
      </>
    );
  }
  return <PackScreen view={packing.value} />;
}
