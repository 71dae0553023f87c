import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { Suspense } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { Waiting } from '#app/_ui/waiting.tsx';
import { openHome } from '#lib/services/house/open-home.ts';
import { USE_WINDOWS } from '#lib/services/house/open-house-figures.ts';
import { HomeCards } from './_home/home-cards.tsx';
import { HomeFigures } from './_home/home-figures.tsx';
import { HomeStart } from './_home/home-start.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Home' };

interface HomePageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function HomePage({ searchParams }: HomePageProps) {
  const context = await asking();
  if (context.actor.role === 'yard') redirect('/yard');
  const home = openHome(context);
  if (!home.ok) {
    return (
      <>
        <h1>Home</h1>
        <p className="notice refusal">{home.reason.sentence}</p>
      </>
    );
  }
  const asked = await searchParams;
  return (
    <>
      <div className="heading">
        <h1>What needs you today</h1>
        <small>
          <ShownDate on={home.value.today} />
        </small>
      </div>
      {home.value.enquiries === 0 ? <HomeStart /> : <HomeCards home={home.value} />}
      <Suspense fallback={<Waiting what="The figures are being added up." />}>
        <HomeFigures
          days={USE_WINDOWS.find((days) => String(days) === asked.days) ?? USE_WINDOWS[1]}
          depot={typeof asked.depot === 'string' ? asked.depot : ''}
        />
      </Suspense>
    </>
  );
}
