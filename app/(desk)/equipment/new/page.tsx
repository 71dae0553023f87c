import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { roleSchema } from '#lib/contracts/equipment-requests.ts';
import { openModel } from '#lib/services/equipment/open-model.ts';
import { readCoherence } from '#lib/services/equipment/read-coherence.ts';
import { readHouseRecord } from '#lib/services/house/house-record.ts';
import { ModelForm } from '../model-form.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Add a model' };

interface NewPageProps {
  readonly searchParams: Promise<{ readonly role?: string; readonly from?: string }>;
}

export default async function NewModelPage({ searchParams }: NewPageProps) {
  const context = await asking();
  const asked = await searchParams;
  const role = roleSchema.safeParse(asked.role);
  const house = readHouseRecord(context);
  const may = readCoherence(context);
  if (!house.ok || !may.ok) return <PlanRefused sentence={house.ok ? '' : house.reason.sentence} />;
  if (!may.value.mayChange) return <PlanRefused sentence="Only an administrator adds equipment; ask one to do it." />;
  if (!role.success) {
    return (
      <>
        <h1>Add a model</h1>
        <p>What is its role?</p>
        <div className="tools">
          {Object.entries(ROLE_NAMES).map(([name, heading]) => (
            <Link key={name} className="button" href={`/equipment/new?role=${name}`}>
              {heading}
            </Link>
          ))}
        </div>
      </>
    );
  }
  const from = asked.from === undefined ? null : openModel(context, { number: asked.from, system: 'si' });
  const copied = from?.ok && from.value.role === role.data ? from.value : null;
  const start = copied === null ? { counted: 'no', made_to_order: 'no', 'rates.minimum_days': '1' } : copied.fields;
  return (
    <>
      <h1>{copied === null ? `Add a model: ${role.data}` : `Copy ${copied.number} as a new ${role.data}`}</h1>
      <p>A quantity may be typed with another unit, for example 8 in; it is kept in the unit beside the name.</p>
      <ModelForm
        role={role.data}
        fields={fieldsOf(role.data, house.value.standing.currency)}
        start={{ ...start, number: '' }}
        existing={null}
      />
    </>
  );
}
