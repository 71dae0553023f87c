import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { readHouseRecord } from '#lib/services/house/house-record.ts';
import { listAllRules } from '#lib/services/house/list-all-rules.ts';
import { RuleList, type RuleRow } from './rule-list.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Rules' };

export default async function RulesPage() {
  const context = await asking();
  const listed = listAllRules(context);
  const house = readHouseRecord(context);
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
      {house.ok ? (
        <section className={styles.panel} aria-labelledby="house-rules">
          <div className="heading">
            <h2 id="house-rules">What this house wants besides</h2>
            <Link className="button" href="/rules/house">
              {house.value.mayChange ? 'Change and try house rules' : 'All of the house rules'}
            </Link>
          </div>
          {house.value.rules.length === 0 ? <p>Nothing yet.</p> : null}
          <ul>
            {house.value.rules.map((rule) => (
              <li key={rule.id}>
                {rule.sentence} {rule.off ? <span className="mark">switched off</span> : null}{' '}
                <span className="soft">{rule.source ?? ''}</span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <RuleList rules={rules} />
    </div>
  );
}

function severityOf(text: string): RuleRow['severity'] {
  return text === 'refusal' || text === 'warning' ? text : 'note';
}
