import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { modelToJson, parseModels } from '#lib/contracts/equipment.ts';
import { demoModels } from '#seeds/load.ts';

const FILES = ['drives', 'heads', 'adapters', 'extensions', 'restraints', 'options', 'accessories'];

function readSeed(name: string): unknown[] {
  return JSON.parse(readFileSync(new URL(`../../../seeds/equipment/${name}.json`, import.meta.url), 'utf8'));
}

/** A deep copy of the first light battery drive's JSON that a test may spoil. */
function oneDrive(change: (drive: Record<string, unknown>, facts: Record<string, unknown>) => void): unknown {
  const drive = structuredClone(readSeed('drives')[0]) as Record<string, unknown>;
  change(drive, drive.facts as Record<string, unknown>);
  return drive;
}

function sentenceOf(json: unknown): string {
  const parsed = parseModels(json);
  return parsed.ok ? 'no error' : parsed.reason.sentence;
}

describe('models in catalogue files', () => {
  it('reading and writing again gives the same JSON for every demo model', () => {
    const json = FILES.flatMap(readSeed);
    const parsed = parseModels(json);
    expect(parsed.ok).toBe(true);
    if (parsed.ok) expect(parsed.value.map(modelToJson)).toEqual(json);
  });

  it('writing and reading again gives the same model for every demo model', () => {
    const models = demoModels();
    const again = parseModels(JSON.parse(JSON.stringify(models.map(modelToJson))));
    expect(again.ok && again.value).toEqual(models);
  });

  it('turns catalogue units into SI', () => {
    const air = demoModels().find((model) => model.number === 'D-233');
    expect(air?.role === 'drive' && air.facts.power).toMatchObject({
      kind: 'air',
      ratedPressure: 600_000,
      hoseBore: 0.019,
    });
    expect(air?.role === 'drive' && air.facts.power.kind === 'air' && air.facts.power.consumption).toBeCloseTo(
      0.0155,
      6,
    );
    expect(air?.role === 'drive' && air.facts.continuousRun).toBe(3600);
  });

  it('names the model number and the field of a wrong value', () => {
    const spoiled = oneDrive((_, facts) => {
      facts.vibration_m_s2 = 'strong';
    });
    expect(sentenceOf([spoiled])).toMatch(/^D-112, facts\.vibration_m_s2: .*expected number/);
  });

  it('names the gear whose rated torque is above its stall torque', () => {
    const spoiled = oneDrive((_, facts) => {
      facts.gears = [{ name: 'only', stall_torque_nm: 20, rated_torque_nm: 21, free_speed_rpm: 90 }];
    });
    expect(sentenceOf([spoiled])).toBe('D-112, facts.gears[0].rated_torque_nm: is above the stall torque.');
  });

  it('refuses a curve that does not end at stall torque', () => {
    const spoiled = oneDrive((_, facts) => {
      const curve = [
        { torque_nm: 0, speed_rpm: 90 },
        { torque_nm: 18, speed_rpm: 0 },
      ];
      facts.gears = [{ name: 'only', stall_torque_nm: 20, rated_torque_nm: 11, free_speed_rpm: 90, curve }];
    });
    expect(sentenceOf([spoiled])).toBe(
      'D-112, facts.gears[0].curve: does not run from free speed without torque to stall torque without speed.',
    );
  });

  it('names a key that it does not know, so that a misspelt fact is never lost', () => {
    const spoiled = oneDrive((drive) => {
      drive.mass_lb = 9;
    });
    expect(sentenceOf([spoiled])).toContain('D-112');
    expect(sentenceOf([spoiled])).toContain('mass_lb');
  });

  it('reports every error, not only the first', () => {
    const first = oneDrive((drive) => {
      drive.mass_kg = -1;
    });
    const second = oneDrive((drive) => {
      drive.number = 'D-998';
      drive.counted = 'yes';
    });
    expect(sentenceOf([first, second])).toMatch(/D-112, mass_kg: .* D-998, counted: /);
  });

  it('calls an entry without a number by its place in the list', () => {
    const nameless = oneDrive((drive) => {
      delete drive.number;
    });
    expect(sentenceOf([nameless])).toMatch(/^Entry 1, number: /);
  });

  it('refuses a number that two models share', () => {
    const drive = readSeed('drives')[0];
    expect(sentenceOf([drive, drive])).toBe('D-112, number: is used by more than one model.');
  });

  it('refuses what is not a list', () => {
    expect(sentenceOf({ drives: [] })).toMatch(/^The catalogue .*expected array/);
  });

  it('refuses a limiter without an error figure, and a head that says open-centre without a bore', () => {
    const limiter = structuredClone(readSeed('options')[2]) as { facts: Record<string, unknown> };
    delete limiter.facts.error;
    expect(sentenceOf([limiter])).toBe('C-203, facts.error: is missing: a torque limiter states it.');
    const head = structuredClone(readSeed('heads').at(-1)) as { facts: Record<string, unknown> };
    delete head.facts.bore_mm;
    expect(sentenceOf([head])).toBe('H-348, facts.bore_mm: is missing: an open-centre head has a bore.');
  });
});
