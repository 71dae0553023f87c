import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { openModel } from '#lib/services/equipment/open-model.ts';
import { ModelForm } from '../../model-form.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Change a model' };

interface EditPageProps {
  readonly params: Promise<{ readonly number: string }>;
}

export default async function EditModelPage({ params }: EditPageProps) {
  const { number } = await params;
  const opened = openModel(await asking(), { number, system: 'si' });
  if (!opened.ok) return <PlanRefused sentence={opened.reason.sentence} />;
  const model = opened.value;
  if (!model.mayChange) return <PlanRefused sentence="Only an administrator changes equipment; ask one to do it." />;
  return (
    <>
      <h1>Change {model.number}</h1>
      <p>A quantity may be typed with another unit, for example 8 in; it is kept in the unit beside the name.</p>
      <ModelForm
        role={model.role}
        fields={fieldsOf(model.role, model.currency)}
        start={model.fields}
        existing={{ number: model.number, version: model.version }}
      />
    </>
  );
}
