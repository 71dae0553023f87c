import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { RULE_KIND_SPECS } from '#lib/contracts/house-rule-values.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { RuleSheet } from '../../rule-sheet.client.tsx';

export const dynamic = 'force-dynamic';

export default async function CustomerRulesPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const customer = openCustomer(await asking(), idOf((await params).id));
  if (!customer.ok) notFound();
  const { id, version, name, facts } = customer.value;
  return (
    <>
      <p className="soft">
        What {name} asks for everywhere. Each rule keeps equipment out of every plan for their enquiries, beside the
        rules of the house, and is named as theirs where it decides. Plans made before are told to be out of date.
      </p>
      <RuleSheet
        keptAt={{ path: `/api/v1/customers/${id}`, body: { version }, facts: {} }}
        rules={facts.house_rules}
        kinds={RULE_KIND_SPECS}
        none="No rule of their own yet. “No petrol within the fence” or “three persons at every valve” is one."
      />
    </>
  );
}
