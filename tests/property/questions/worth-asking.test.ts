import fc from 'fast-check';
import { it } from 'vitest';
import { SELF_SERVICE_FACTS as bounds } from '#lib/contracts/self-service-facts.ts';
import { parseSite } from '#lib/contracts/site.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { type LineOutcome, lineOutcome, readTold } from '#lib/questions/line-outcome.ts';
import { askLine } from '#lib/questions/next-question.ts';
import { demoModels } from '#seeds/load.ts';
import { holdsFor } from '#tests/support/checked-property.ts';

const models = demoModels();
const parsed = parseSite({ zone: 'none' }, { startsOn: '2030-06-03' });
if (!parsed.ok) throw new Error(parsed.reason.sentence);
const site = parsed.value;

const may = (texts: readonly string[]) => fc.option(fc.constantFrom(...texts), { nil: undefined });
const lines = fc
  .record({
    valve_type: may(['gate', 'globe', 'butterfly', 'penstock']),
    driven_by: may(['handwheel', 'key cap', 'gearbox wheel']),
    size: may(['DN 80', 'DN 150', 'DN 300']),
    condition: may(['free', 'stiff', 'seized']),
    differential_pressure: may(['2 bar', '10 bar']),
    stem: may(['non-rising', 'rising through the wheel']),
    depth_to_nut: may(['1.2 m']),
  })
  .map(
    (given): Cells => ({
      tag: 'V1',
      ...Object.fromEntries(Object.entries(given).filter(([, text]) => text !== undefined)),
    }),
  );

/** What a customer would see change: the reasons to hand over, or else the pieces and their hire. */
function seen({ handOver, kit, hire_minor }: LineOutcome): string {
  return handOver.length > 0 ? JSON.stringify(handOver.map(({ code }) => code)) : JSON.stringify({ kit, hire_minor });
}

it('no question is asked of which no answer changes the outcome, worked out anew for each answer', () => {
  holdsFor({
    law: 'a question that is asked can change the answer',
    cases: lines,
    runs: 12,
    check: (cells) => {
      const { questions, outcome } = askLine({ told: { cells, unknown: [] }, site, models, bounds });
      for (const { column, answers } of questions) {
        const after = answers.map((text) =>
          seen(lineOutcome(readTold({ ...cells, [column]: text }, site), { site, models, bounds })),
        );
        if (after.every((one) => one === seen(outcome)))
          throw new Error(`${column} changes nothing of ${JSON.stringify(cells)}: ${after.join(' / ')}`);
      }
      return questions.length > 0;
    },
  });
});

it('what one does not know is not asked again, and is named as what to find out', () => {
  holdsFor({
    law: 'a question that was declined is not asked again',
    cases: lines,
    runs: 6,
    check: (cells) => {
      const first = askLine({ told: { cells, unknown: [] }, site, models, bounds }).questions[0];
      if (first === undefined) return false;
      const then = askLine({ told: { cells, unknown: [first.column] }, site, models, bounds });
      if (then.questions.some(({ column }) => column === first.column))
        throw new Error(`${first.column} is asked again`);
      if (then.findOut?.column !== first.column) throw new Error(`${first.column} is not named`);
      return true;
    },
  });
});
