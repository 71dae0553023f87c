import { plausibleCatalogue } from '#tests/support/plausible-catalogue.ts';
import { plausibleSchedule, PLAUSIBLE_SITE as site } from '#tests/support/plausible-schedule.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { findChoices, factsOf, searchStockFirst } from '#lib/kits/find-choices.ts';
import { listAssemblies } from '#lib/kits/list-assemblies.ts';
import { pairDuties } from '#lib/planning/pose-problem.ts';
import { stockByRole } from '#lib/kits/stock-by-role.ts';
import { findFrames } from '#lib/kits/frames.ts';
import { ALL_REFUSALS, newTally } from '#lib/kits/refusals.ts';
import { familiesOf } from '#lib/kits/families.ts';
const constraints = { lockedParts: [], excludedParts: [], pins: [] } as const;
const { models } = plausibleCatalogue({ seed: 400, models: 400 });
const lines = plausibleSchedule({ seed: 401, lines: 24 });
const ld = pairDuties(lines, assessDuties({ lines, site }));
const cpu = () => { const u = process.cpuUsage(); return u.user / 1000; };
const min = (f: () => unknown) => { let b = 1e9; for (let i = 0; i < 5; i += 1) { const a = cpu(); f(); b = Math.min(b, cpu() - a); } return b.toFixed(1); };
for (const one of ld.slice(0, 7)) {
  const facts = factsOf({ ...one, site });
  const stock = stockByRole(models);
  const frames = findFrames(stock);
  const q = () => ({ facts, stock, frames, refusals: ALL_REFUSALS, wishes: [], tally: newTally(), made: 'stock only' } as const);
  const qq = q();
  const found = searchStockFirst(qq);
  console.log('stock', min(() => stockByRole(models)), 'frames', min(() => findFrames(stock)), 'search', min(() => searchStockFirst(q())), 'families', min(() => familiesOf({ facts, stock, found })), 'list', process.argv[2] ? min(() => listAssemblies({ lineDuty: one, site, models, constraints, limit: 12 })) : '', JSON.stringify(qq.tally), 'found', found.length);
}
