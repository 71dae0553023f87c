import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { openPicking } from '#lib/services/yard/picking/open-picking.ts';
import { PickScreen } from './pick-screen.client.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata({ params }: BookingParams): Promise<Metadata> {
  return { title: `Pick ${(await params).number}` };
}

export default async function PickPage({ params }: BookingParams) {
  const { number } = await params;
  const picking = openPicking(await asking(), decodeURIComponent(number));
  if (!picking.ok) {
    return (
      <>
        <h1>Pick {number}</h1>
        <p className="notice refusal">{picking.reason.sentence}</p>
      </>
    );
  }
  return <PickScreen view={picking.value} />;
}
