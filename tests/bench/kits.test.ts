import { describe, expect, it } from 'vitest';
import { findChoices } from '#lib/kits/find-choices.ts';
import { demoModels } from '#seeds/load.ts';
import { randomHouse } from '#tests/support/kit-cases.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

function timed<Value>(run: () => Value): { readonly value: Value; readonly milliseconds: number } {
  const started = performance.now();
  const value = run();
  return { value, milliseconds: performance.now() - started };
}

describe('effort of finding choices', () => {
  it('stays as it is for sixty classes and a hundred and fifty models', () => {
    const house = randomHouse({ seed: 60, models: 150, lines: 60 });
    const run = () => findChoices({ ...house, constraints: NONE });
    run();
    const { value, milliseconds } = timed(run);
    console.info(
      `60 classes × ${house.models.length} models: ${milliseconds.toFixed(0)} ms, ${value.classes.length} served`,
    );
    expect(value.effort).toEqual({
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
      const run = () => findChoices({ ...house, lines: [line], constraints: NONE });
      run();
      const { value, milliseconds } = timed(run);
      console.info(`1 line × ${house.models.length} models: ${milliseconds.toFixed(1)} ms`);
      return value.effort;
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
    const run = () => findChoices({ lines, site, models, constraints: NONE });
    run();
    const { value, milliseconds } = timed(run);
    console.info(
      `60 classes × ${models.length} models: ${milliseconds.toFixed(0)} ms, ${value.classes.length} served, effort ${JSON.stringify(value.effort)}`,
    );
    expect(value.classes.length + value.unserved.length).toBe(60);
  });
});
