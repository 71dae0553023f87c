import { expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { pairDuties } from '#lib/planning/pose-problem.ts';
import { checkedChoices } from '#tests/support/checked.ts';
import { plausibleCatalogue } from '#tests/support/kits/plausible-catalogue.ts';
import { PLAUSIBLE_SITE, plausibleSchedule } from '#tests/support/lists/plausible-schedule.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

/** A change here is a change of the search and needs its reason in the commit. */
const EFFORT: Readonly<Record<string, object>> = {
  '60 × 12': {
    served: 2,
    classes: 7,
    frames: 48,
    frame_evaluations: 45,
    rule_evaluations: 10976,
    cores: 64,
    pairs: 117,
  },
  '150 × 12': {
    served: 6,
    classes: 7,
    frames: 456,
    frame_evaluations: 93,
    rule_evaluations: 38742,
    cores: 1364,
    pairs: 502,
  },
  '400 × 3': {
    served: 2,
    classes: 2,
    frames: 6144,
    frame_evaluations: 93,
    rule_evaluations: 60774,
    cores: 6302,
    pairs: 1053,
  },
};

it.each([
  { models: 60, lines: 12 },
  { models: 150, lines: 12 },
  { models: 400, lines: 3 },
])('the search for $lines lines among $models models takes the same effort on every machine', (size) => {
  const { models } = plausibleCatalogue({ seed: size.models, models: size.models });
  const lines = plausibleSchedule({ seed: 7, lines: size.lines });
  const duties = assessDuties({ lines, site: PLAUSIBLE_SITE });
  const choices = checkedChoices({ lines: pairDuties(lines, duties), site: PLAUSIBLE_SITE, models, constraints: NONE });
  expect({ served: choices.classes.length, ...choices.effort }).toEqual(EFFORT[`${size.models} × ${size.lines}`]);
});
