import type { PackingView } from '#lib/services/yard/packing/open-packing.ts';

/** What is printed for the load, and what each way of transport asks of it. */
export function LoadPapers({ view }: { readonly view: PackingView }) {
  const paper = (kind: string) => `/api/v1/yard/bookings/${view.number}/papers/${kind}`;
  return (
    <section className="card" aria-label="Papers and transport">
      <h2>Papers and transport</h2>
      <p className="tools">
        <a className="button main" href={paper('case-labels')} target="_blank" rel="noreferrer">
          Case labels
        </a>
        {view.hasQuote && (
          <>
            <a className="button main" href={paper('packing-list')} target="_blank" rel="noreferrer">
              Packing list
            </a>
            <a className="button" href={paper('site-sheet')} target="_blank" rel="noreferrer">
              Site sheets
            </a>
            <a className="button" href={paper('certificates')} target="_blank" rel="noreferrer">
              Certificates
            </a>
            <a className="button" href={paper('despatch-xml')}>
              Despatch advice (UBL 2.1)
            </a>
          </>
        )}
      </p>
      <ul className="goods">
        {view.routes.map(({ transport, standing, cases, sources }) => (
          <li key={transport}>
            <strong>By {transport}</strong>
            {transport === view.transport ? ' (this load)' : ''}: {standing}
            {cases.length === 0 ? '' : `, case ${cases.join(', ')}`}.{' '}
            <small className="soft">{sources.join(' ')}</small>
          </li>
        ))}
      </ul>
      {view.transport === 'road' && <p className="soft">{view.loadSentence}</p>}
      <p className="soft">
        Whoever hands over and carries the load checks these lines against the rules in force on the day.
      </p>
    </section>
  );
}
