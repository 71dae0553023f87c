import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { openCharges } from '#lib/services/yard/back/open-charges.ts';
import { ChargesPanel } from '../../../_blocks/charges-panel.client.tsx';

export const dynamic = 'force-dynamic';

interface ChargesParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function generateMetadata({ params }: ChargesParams): Promise<Metadata> {
  return { title: `Charges ${(await params).number}` };
}

export default async function ChargesPage({ params }: ChargesParams) {
  const number = decodeURIComponent((await params).number);
  const charges = openCharges(await asking(), number);
  return (
    <>
      <div className="heading">
        <h1>Charges: {number}</h1>
        <small>what a return comes to beyond the quote</small>
      </div>
      {charges.ok ? <ChargesPanel view={charges.value} /> : <p className="notice refusal">{charges.reason.sentence}</p>}
      <p>
        <Link className="button" href={`/yard/back/${number}`}>
          What is back
        </Link>
      </p>
    </>
  );
}
