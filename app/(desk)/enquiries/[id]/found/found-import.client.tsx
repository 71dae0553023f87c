'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Sent, send } from '#app/_lib/send.client.tsx';
import type { VisitsImported } from '#lib/services/visits/import-visits.ts';
import { FoundProblems } from './found-problems.tsx';

/** Takes a filled-in as-found list; the template has the valves in it already. */
export function FoundImport({ enquiryId }: { readonly enquiryId: number }) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [sent, setSent] = useState<Sent<VisitsImported> | null>(null);

  async function take(form: FormData): Promise<void> {
    setBusy(true);
    const path = `/api/v1/enquiries/${enquiryId}/visits/list`;
    const answer = await send<VisitsImported>({ method: 'POST', path, body: form });
    setSent(answer);
    setBusy(false);
    if (answer.ok && answer.value.rows.length > 0) router.refresh();
  }

  return (
    <details>
      <summary>From a list (CSV or XLSX)</summary>
      <p>
        <a href={`/api/v1/enquiries/${enquiryId}/visits/template`}>Download the list to fill in</a>, with these valves
        in working order; units may stand in the cells.
      </p>
      <form action={take}>
        <label>
          Filled-in list
          <input type="file" name="list" accept=".csv,.tsv,.txt,.xlsx" required />
        </label>{' '}
        <button type="submit" disabled={busy}>
          {busy ? 'Reading…' : 'Take the list in'}
        </button>
      </form>
      <div role="status">{sent?.ok ? <Taken taken={sent.value} /> : null}</div>
      <div role="alert">{sent && !sent.ok ? <p className="notice refusal">{sent.sentence}</p> : null}</div>
    </details>
  );
}

function Taken({ taken }: { readonly taken: VisitsImported }) {
  const { rows, problems, unknown } = taken;
  return (
    <>
      <p className="notice">
        {rows.length === 1 ? '1 valve is recorded.' : `${rows.length} valves are recorded.`}
        {problems.some(({ severity }) => severity === 'refused')
          ? ' Correct the cells below in the list and take it in again; what is recorded stays.'
          : ''}
        {unknown.length > 0 ? ` Left out, as their headings are not known: ${unknown.join(', ')}.` : ''}
      </p>
      <FoundProblems problems={problems} nameOf={(row) => `Row ${row}`} />
    </>
  );
}
