import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import { RULE_KIND_SPECS } from '#lib/contracts/house-rule-values.ts';
import { readHouseRecord } from '#lib/services/house/house-record.ts';
import { ChangeHistory } from '../../equipment/change-history.tsx';
import { HouseRulesEditor } from './house-rules.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'House rules' };

export default async function HouseRulesPage() {
  const read = readHouseRecord(await asking());
  if (!read.ok) return <PlanRefused sentence={read.reason.sentence} />;
  const { rules, version, mayChange, changes } = read.value;
  return (
    <>
      <p className="soft">
        <Link href="/rules">Rules</Link> / house rules
      </p>
      <h1>House rules</h1>
      <p>
        What this house wants beyond what the mechanics ask for, in its own words. They hold for every line that is
        worked out from now on; rules of a customer or a site come on top. Before a change is saved it can be tried on
        the lines of all open enquiries.
      </p>
      <HouseRulesEditor key={version} rules={rules} version={version} specs={RULE_KIND_SPECS} mayChange={mayChange} />
      <section className="panel" aria-labelledby="changes">
        <h2 id="changes">What changed</h2>
        <ChangeHistory changes={changes.filter(({ action }) => action.startsWith('house rules'))} />
      </section>
    </>
  );
}
