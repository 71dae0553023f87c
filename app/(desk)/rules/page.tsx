import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import styles from '#app/_ui/plan-sheet.module.css';
import { listAllRules } from '#lib/services/list-all-rules.ts';
import { RuleList, type RuleRow } from './rule-list.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Rules' };

export default async function RulesPage() {
  const listed = listAllRules(await asking());
  if (!listed.ok) return <p className="notice refusal">{listed.reason.sentence}</p>;
  const rules = listed.value.map((rule) => ({
    id: rule.id,
    topic: rule.topic,
    title: rule.title,
    severity: severityOf(rule.severity),
    source: rule.source,
    about: rule.speaks_of.join(', ').replaceAll('_', ' '),
  }));
  return (
    <div className={styles.page}>
      <div>
        <h1>Rules</h1>
        <p className={styles.lead}>
          A refusal keeps a part or an assembly out; warnings and notes travel with it to the papers. A rule of thumb
          says so in its source. Local codes, the valve maker’s data and competent persons come before any of them.
        </p>
      </div>
      <RuleList rules={rules} />
    </div>
  );
}

function severityOf(text: string): RuleRow['severity'] {
  return text === 'refusal' || text === 'warning' ? text : 'note';
}
