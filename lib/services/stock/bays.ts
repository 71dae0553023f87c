/*
 * The bays of the depots: which there are, and adding one at its place on the walk.
 * Invariant: equipment stands only in bays that are known, so that a label leads somewhere.
 * Not here: what stands in them.
 * Read next: unit-record.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { type BayAt, type BayRow, findBay, listBays, saveBay } from '#db/queries/stock.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { bayCode, readScan } from '#lib/stock/scan-code.ts';
import { knownDepot } from './unit-record.ts';

export function knownBay(tx: DbOrTx, at: BayAt): Result<true> {
  if (findBay(tx, { ...at, bay: at.bay.toUpperCase() })) return ok(true);
  return failed({
    code: 'no-such-bay',
    sentence: `${at.depot} has no bay ${at.bay.slice(0, 20)}: scan the label on the bay, or add the bay first.`,
  });
}

export interface BayToSave extends BayAt {
  /** Place on the walk through the depot; absent puts a new bay at the end. */
  readonly walkOrder?: number | undefined;
  readonly note: string;
}

export function saveHouseBay(context: Context, input: BayToSave): Result<BayAt> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  const depot = knownDepot(context, input.depot);
  if (!depot.ok) return depot;
  const name = readBayName(input);
  if (!name.ok) return name;
  const bay = name.value;
  return context.database.db.transaction(
    (tx) => {
      const there = findBay(tx, { depot: input.depot, bay });
      const last = Math.max(0, ...listBays(tx).flatMap((row) => (row.depot === input.depot ? row.walk_order : [])));
      const order = input.walkOrder ?? there?.walk_order ?? last + 1;
      saveBay(tx, { depot: input.depot, code: bay, walk_order: order, note: input.note.trim() });
      const deed = { action: 'bay saved', subject: `bay ${input.depot}/${bay}`, detail: { walkOrder: order } };
      logChange(tx, { context, deed });
      return ok({ depot: input.depot, bay });
    },
    { behavior: 'immediate' },
  );
}

/** The name of a bay as its label will read. */
export function readBayName({ depot, bay }: BayAt): Result<string> {
  const scan = readScan(bayCode({ depot, bay }));
  if (scan.kind === 'bay' && scan.depot === depot) return ok(scan.bay);
  return failed({
    code: 'bay-unreadable',
    sentence: `${bay.slice(0, 20)} cannot name a bay: it holds letters, figures and hyphens, at most twelve, such as A07.`,
  });
}

export function listHouseBays(context: Context): Result<readonly BayRow[]> {
  const allowed = authorise(context, 'read the yard');
  return allowed.ok ? ok(listBays(context.database.db)) : allowed;
}
