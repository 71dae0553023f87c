/*
 * A line as the duty takes it: each number judged by itself, then against the others.
 * Invariant: of one value one question is asked, the one that its size gives where there are two.
 * Not here: the judging itself (sound-line.ts, unlikely-values.ts).
 * Read next: sound-line.ts, unlikely-values.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { soundLine } from './sound-line.ts';
import { askUnlikely } from './unlikely-values.ts';

export function judgeLine(line: ScheduleLine): { readonly line: ScheduleLine; readonly findings: readonly Finding[] } {
  const judged = soundLine(line);
  const asked = askUnlikely(judged.line);
  const own = judged.findings.filter((one) => !isAskedAgain(one, asked.findings));
  return { line: asked.line, findings: [...own, ...asked.findings] };
}

function isAskedAgain(one: Finding, others: readonly Finding[]): boolean {
  return one.id === 'value-unlikely' && others.some(({ id, about }) => id === one.id && about[0] === one.about[0]);
}
