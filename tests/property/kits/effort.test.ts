import { describe, expect, it } from 'vitest';
import { timedChoices } from '#tests/support/checked.ts';
import { randomHouse } from '#tests/support/kits/kit-cases.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

describe('effort of finding choices', () => {
  it('stays as it is for twelve classes and a hundred and fifty models', () => {
    const house = randomHouse({ seed: 60, models: 150, lines: 12 });
    const run = () => timedChoices({ ...house, constraints: NONE });
    const { choices, milliseconds } = run();
    console.info(
      `12 classes × ${house.models.length} models: ${milliseconds.toFixed(0)} ms, ${choices.classes.length} served`,
    );
    expect(choices.effort).toEqual({
      classes: 12,
      frames: 464,
      frame_evaluations: 237,
      rule_evaluations: 141_816,
      cores: 6162,
      pairs: 6014,
    });
  });

  it('stays as it is for one line and four hundred models', () => {
    const house = randomHouse({ seed: 400, models: 400, lines: 2 });
    const efforts = house.lines.map((line) => {
      const run = () => timedChoices({ ...house, lines: [line], constraints: NONE });
      const { choices, milliseconds } = run();
      console.info(`1 line × ${house.models.length} models: ${milliseconds.toFixed(1)} ms`);
      return choices.effort;
    });
    expect(efforts).toEqual([
      { classes: 1, frames: 6864, frame_evaluations: 237, rule_evaluations: 73_592, cores: 9144, pairs: 15106 },
      { classes: 1, frames: 6864, frame_evaluations: 237, rule_evaluations: 69_220, cores: 8671, pairs: 9855 },
    ]);
  });
});
