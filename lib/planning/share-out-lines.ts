/*
 * Shares the served valves of each class out over its lines, in working order, crew by crew.
 * Invariant: no line gets more than it asked for; the sum over lines is what the plan serves.
 * Not here: deciding how many are served (lib/fleet).
 * Read next: work-out.ts.
 */
import type { LineClass } from '#lib/equipment/choices.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import type { PlannedLine, PlannedWork } from './worked-out.ts';

interface ShareInput {
  readonly classes: readonly LineClass[];
  readonly lineDuties: readonly LineDuty[];
  readonly work: readonly PlannedWork[];
}

export function shareOutLines({ classes, lineDuties, work }: ShareInput): readonly PlannedLine[] {
  const order = new Map(
    lineDuties.map(({ line }, index) => [
      line.tag,
      { at: line.place.placeOrder ?? Number.MAX_SAFE_INTEGER, index, qty: line.qty },
    ]),
  );
  return classes.flatMap((lineClass) => {
    const tags = [...lineClass.tags].sort((a, b) => rank(a) - rank(b) || index(a) - index(b));
    const left = work
      .filter((served) => served.classId === lineClass.id)
      .map((served) => ({ served, qty: served.qty }));
    return tags.map((tag) => takeFor({ tag, classId: lineClass.id, asked: order.get(tag)?.qty ?? 1, left }));
  });

  function rank(tag: string): number {
    return order.get(tag)?.at ?? 0;
  }
  function index(tag: string): number {
    return order.get(tag)?.index ?? 0;
  }
}

interface Taking {
  readonly tag: string;
  readonly classId: string;
  readonly asked: number;
  readonly left: { readonly served: PlannedWork; qty: number }[];
}

function takeFor({ tag, classId, asked, left }: Taking): PlannedLine {
  const parts: { crew: number; qty: number; assembly: string }[] = [];
  let open = asked;
  for (const portion of left) {
    if (open === 0) break;
    const qty = Math.min(open, portion.qty);
    if (qty === 0) continue;
    portion.qty -= qty;
    open -= qty;
    parts.push({ crew: portion.served.crew, qty, assembly: portion.served.assembly });
  }
  return { tag, classId, asked, served: asked - open, parts };
}
