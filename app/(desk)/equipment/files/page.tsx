import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { readCoherence } from '#lib/services/equipment/read-coherence.ts';
import { CsvExchange } from '../csv-exchange.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Files of the catalogue' };

interface FilesPageProps {
  readonly searchParams: Promise<{ readonly role?: string }>;
}

export default async function FilesPage({ searchParams }: FilesPageProps) {
  const may = readCoherence(await asking());
  if (!may.ok) return <PlanRefused sentence={may.reason.sentence} />;
  const asked = (await searchParams).role ?? 'drive';
  const [role, heading] = Object.entries(ROLE_NAMES).find(([name]) => name === asked) ?? ['drive', 'Drives'];
  return (
    <>
      <p className="soft">
        <Link href="/equipment">Equipment</Link> / files
      </p>
      <h1>Files of the catalogue</h1>
      <p>
        A role at a time, one model a row, units in the head of each column. Models that a file does not name stay as
        they are; a number that is not there yet is added. Rates after the first are on the page of rates.
      </p>
      <nav className="tabs" aria-label="Role">
        {Object.entries(ROLE_NAMES).map(([name, words]) => (
          <Link key={name} href={`/equipment/files?role=${name}`} aria-current={name === role ? 'page' : undefined}>
            {words}
          </Link>
        ))}
      </nav>
      <CsvExchange
        key={role}
        path={`/api/v1/catalogue/${role}`}
        what={heading.toLowerCase()}
        mayChange={may.value.mayChange}
      />
    </>
  );
}
