import { redirect } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { PlanRefused } from '#app/_ui/plan-refused.tsx';
import styles from '#app/_ui/plan-sheet.module.css';
import { listLines } from '#lib/services/schedule/list-lines.ts';

export const dynamic = 'force-dynamic';

const LOOKED_AT = 100;
/** A repeated tag is told apart by its row, as in `V-7 (row 12)`. */
const WITH_ROW = /^(.*) \(row (\d+)(?:, \d+)?\)$/;

interface FindProps {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly tag?: string }>;
}

/** Leads from a tag to its line. */
export default async function FindLinePage({ params, searchParams }: FindProps) {
  const id = idOf((await params).id);
  const asked = (await searchParams).tag ?? '';
  if (asked === '') redirect(`/enquiries/${id}`);
  const repeated = WITH_ROW.exec(asked);
  const tag = repeated?.[1] ?? asked;
  const found = listLines(await asking(), { enquiryId: id, from: 0, count: LOOKED_AT, text: tag });
  if (!found.ok) return <PlanRefused sentence={found.reason.sentence} />;
  const line =
    found.value.lines.find((other) => other.tag === asked) ??
    found.value.lines.find((other) => other.tag === tag && other.row === Number(repeated?.[2]));
  if (line) redirect(`/enquiries/${id}/lines/${line.id}`);
  return (
    <div className={styles.notice}>
      <p>There is no line “{asked}” any more; the schedule may have changed since the plan.</p>
      <a href={`/enquiries/${id}`}>To the schedule</a>
    </div>
  );
}
