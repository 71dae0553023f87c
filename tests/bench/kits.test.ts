import { describe, expect, it } from 'vitest';
import { demoModels } from '#seeds/load.ts';
import { timedChoices } from '#tests/support/checked.ts';
import { randomHouse } from '#tests/support/kit-cases.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

describe('effort of finding choices', () => {
  it('stays as it is for sixty classes and a hundred and fifty models', () => {
    const house = randomHouse({ seed: 60, models: 150, lines: 60 });
    const run = () => timedChoices({ ...house, constraints: NONE });
    const { choices, milliseconds } = run();
    console.info(
      `60 classes × ${house.models.length} models: ${milliseconds.toFixed(0)} ms, ${choices.classes.length} served`,
    );
    expect(choices.effort).toEqual({
      classes: 60,
      frames: 464,
      frame_evaluations: 1489,
      rule_evaluations: 2_708_794,
      cores: 37_052,
      pairs: 404_502,
    });
  });

  it('stays as it is for one line and four hundred models', () => {
    const house = randomHouse({ seed: 400, models: 400, lines: 4 });
    const efforts = house.lines.map((line) => {
      const run = () => timedChoices({ ...house, lines: [line], constraints: NONE });
      const { choices, milliseconds } = run();
      console.info(`1 line × ${house.models.length} models: ${milliseconds.toFixed(1)} ms`);
      return choices.effort;
    });
    expect(efforts).toEqual([
      {
        classes: 1,
        frames: 6864,
        frame_evaluations: 16_764,
        rule_evaluations: 1_688_591,
        cores: 10_080,
        pairs: 341_375,
      },
      {
        classes: 1,
        frames: 6864,
        frame_evaluations: 16_764,
        rule_evaluations: 1_476_348,
        cores: 10_080,
        pairs: 296_731,
      },
      {
        classes: 1,
        frames: 6864,
        frame_evaluations: 16_764,
        rule_evaluations: 2_471_858,
        cores: 10_080,
        pairs: 474_410,
      },
      {
        classes: 1,
        frames: 6864,
        frame_evaluations: 16_764,
        rule_evaluations: 3_924_423,
        cores: 10_080,
        pairs: 775_586,
      },
    ]);
  });

  it('is reported for sixty classes on the house’s own catalogue', () => {
    const { lines, site } = randomHouse({ seed: 61, models: 10, lines: 60 });
    const models = demoModels();
    const run = () => timedChoices({ lines, site, models, constraints: NONE });
    const { choices, milliseconds } = run();
    console.info(
      `60 classes × ${models.length} models: ${milliseconds.toFixed(0)} ms, ${choices.classes.length} served, effort ${JSON.stringify(choices.effort)}`,
    );
    expect(choices.classes.length + choices.unserved.length).toBe(60);
  });
});
