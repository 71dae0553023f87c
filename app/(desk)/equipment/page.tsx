import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { listModelsView } from '#lib/services/equipment/list-models-view.ts';
import { readCoherence } from '#lib/services/equipment/read-coherence.ts';
import { factTexts } from './fact-texts.ts';
import { type ModelFilter, ModelSearch, ModelTables } from './model-tables.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Equipment' };

interface EquipmentPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function EquipmentPage({ searchParams }: EquipmentPageProps) {
  const context = await asking();
  const [system, asked] = await Promise.all([unitSystem(), searchParams]);
  const filter = filterOf(asked);
  const models = listModelsView(context, filter.retired ? 'retired' : 'in use');
  const coherence = readCoherence(context);
  if (!models.ok || !coherence.ok) return <PlanRefused sentence={models.ok ? '' : models.reason.sentence} />;
  const words = filter.text.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = models.value
    .filter((model) => filter.role === '' || model.role === filter.role)
    .filter((model) => filter.source === '' || model.source === filter.source)
    .map((model) => ({ ...model, told: factTexts(model.facts, system) }))
    .filter((model) => {
      const text = `${model.number} ${model.name} ${model.told.map((fact) => `${fact.label} ${fact.text}`).join(' ')}`;
      return words.every((word) => text.toLowerCase().includes(word));
    });
  const currency = models.value[0]?.currency ?? '';
  return (
    <>
      <div className="heading">
        <h1>Equipment</h1>
        <nav className="tools" aria-label="Work on the catalogue">
          {coherence.value.mayChange ? (
            <Link className="button main" href="/equipment/new">
              Add a model
            </Link>
          ) : null}
          <Link className="button" href="/equipment/rates">
            Rates
          </Link>
          <Link className="button" href="/equipment/files">
            Files
          </Link>
          <Link className="button" href="/house">
            House
          </Link>
        </nav>
      </div>
      <p>
        All that the house hires out. Rates are net, in {currency}, as they hold today; the price takes the cheapest mix
        of them for the days of hire.
      </p>
      {coherence.value.warnings.length > 0 ? <Warnings sentences={coherence.value.warnings} /> : null}
      <ModelSearch filter={filter} count={shown.length} />
      <ModelTables models={shown} currency={currency} system={system} />
      {shown.length === 0 ? (
        <p className="empty">
          No model fits what you ask for. <Link href="/equipment">Show all</Link>
        </p>
      ) : null}
    </>
  );
}

function Warnings({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <details className="notice warning">
      <summary>
        The catalogue does not hang together in {sentences.length} {sentences.length === 1 ? 'place' : 'places'}
      </summary>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}

function filterOf(asked: Awaited<EquipmentPageProps['searchParams']>): ModelFilter {
  const one = (name: string): string => (typeof asked[name] === 'string' ? asked[name] : '');
  const role = one('role');
  return {
    text: one('text').slice(0, 200),
    role: role in ROLE_NAMES ? role : '',
    source: ['battery', 'air', 'petrol'].find((source) => source === one('source')) ?? '',
    retired: one('retired') === 'yes',
  };
}
