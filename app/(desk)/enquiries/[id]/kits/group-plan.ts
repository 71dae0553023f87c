import { assemblyNames } from '#app/_ui/line/line-parts.ts';
import type { PlannedLineView, PlanView } from '#lib/services/plans/plan-view.ts';
import { formatCeiling, formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { LineGroup, RefusedGroup } from './plan-lines.client.tsx';

type Assembly = NonNullable<PlannedLineView['assembly']>;
type Limit = Assembly['opening']['unseat'];

/** Served lines by the assembly that does them, the largest group first. */
export function groupLines(
  lines: PlanView['lines'],
  { names, system }: { readonly names: Readonly<Record<string, string>>; readonly system: UnitSystem },
): readonly LineGroup[] {
  const groups = new Map<Assembly, PlannedLineView[]>();
  for (const line of lines) {
    if (line.assembly === null) continue;
    const group = groups.get(line.assembly);
    if (group) group.push(line);
    else groups.set(line.assembly, [line]);
  }
  return [...groups]
    .map(([assembly, members], index) => ({
      key: `${index} ${assembly.id}`,
      parts: assemblyNames(assembly, names),
      settings: settingsText(assembly, system),
      valves: members.reduce((sum, line) => sum + line.served, 0),
      crews: [...new Set(members.flatMap((line) => line.crews))].map((crew) => crew + 1).join(', '),
      tags: members.map((line) => line.tag),
      warnings: assembly.findings.filter((finding) => finding.severity === 'warning').length,
    }))
    .sort((a, b) => b.valves - a.valves);
}

function settingsText({ opening, closing }: Assembly, system: UnitSystem): string {
  const open = limitText(opening.unseat, system);
  const close = limitText(closing.seat ?? closing.run, system);
  if (open === '' && close === '') return 'no limiter';
  return `open ${open === '' ? 'without' : open}; close ${close === '' ? 'without' : close}`;
}

function limitText(limit: Limit, system: UnitSystem): string {
  if (limit === null) return '';
  const print = (value: number) => formatQuantity({ value, unit: 'N·m', system });
  return `${print(limit.atValve.start)} to ${formatCeiling(limit.atValve.ceiling, system)}`;
}

/** Lines without an assembly, together where the reasons are the same. */
export function groupRefusals(unserved: PlanView['unserved']): readonly RefusedGroup[] {
  const groups = new Map<string, { readonly first: PlanView['unserved'][number]; readonly tags: string[] }>();
  for (const line of unserved) {
    const key = `${line.classId} ${line.because.map((finding) => finding.sentence).join(' ')}`;
    const group = groups.get(key);
    if (group) group.tags.push(line.tag);
    else groups.set(key, { first: line, tags: [line.tag] });
  }
  return [...groups].map(([key, { first, tags }]) => ({
    key,
    tags,
    because: first.because.map(({ about: _about, id: _id, severity: _severity, ...told }) => told),
    repairs: first.repairs,
  }));
}
