import { describe, expect, it } from 'vitest';
import { torqueLadder } from '#lib/documents/drawings/torque-ladder.ts';
import { torqueScale } from '#lib/documents/drawings/torque-scale.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import { sampleAssembly, sampleDuty } from '#tests/support/papers/sample-duty.ts';
import { SAMPLE_MODELS } from '#tests/support/papers/sample-models.ts';
import { textOverlaps } from '#tests/support/papers/text-overlaps.ts';

const BOUNDS = ['wheel', 'spokes', 'hand force', 'gearbox input', 'end stop', 'flange', 'spindle pin', 'stem buckling'];

function randomDuty(random: () => number, index: number) {
  const spread = 10 ** (random() * 4 - 1);
  const run = spread * (0.4 + random());
  const start = run * (1 + random() * 1.5);
  const never = start * 10 ** (random() * 2.4 - 0.7);
  const otherBounds = BOUNDS.slice(0, Math.floor(random() * 9)).map((kind): readonly [string, number] => [
    kind,
    never * (1 + random() ** 3 * 6),
  ]);
  return sampleDuty({
    tag: `R-${index}`,
    run: [run * 0.6, run, run * 1.7],
    start: [start * 0.7, start, start * 1.9],
    never,
    otherBounds,
    limiterFits: random() < 0.2 ? 'no' : 'yes',
  });
}

describe('torque ladder', () => {
  it('lets no two labels overlap and none leave the picture, over random duties with and without an assembly', () => {
    const random = seededRandom(29);
    let texts = 0;
    for (let index = 0; index < 600; index += 1) {
      const duty = randomDuty(random, index);
      const drawing = torqueLadder({
        duty,
        system: index % 2 === 0 ? 'si' : 'us',
        ...(index % 3 === 0
          ? {}
          : {
              assembly: sampleAssembly(duty, { extensions: index % 5 === 0 ? ['E-112', 'E-140'] : [] }),
              models: SAMPLE_MODELS,
            }),
      });
      texts += drawing.shapes.filter((shape) => shape.kind === 'text').length;
      expect(textOverlaps(drawing), `duty ${index}`).toEqual([]);
    }
    expect(texts).toBeGreaterThan(12_000);
  });

  it('puts what the valve must never see above its limiter ceiling, each way', () => {
    const duty = sampleDuty({ tag: 'GV-1' });
    const said = torqueLadder({ duty, system: 'si' }).description;
    expect(said).toContain('Never above 310 N·m (stem torsion, computed)');
    expect(said).toContain('Opening: Run 38…74 N·m, likely 52');
    expect(said).toContain('Closing: Run 31.9…62.2 N·m, likely 43.7');
  });

  it('says that no setting satisfies both ends where the window is empty', () => {
    const duty = sampleDuty({ tag: 'GV-2', start: [150, 260, 420], never: 210, limiterFits: 'no' });
    expect(torqueLadder({ duty, system: 'si' }).description).toContain('No limiter setting satisfies both ends');
  });

  it('says that the load can turn the stem by itself when the running torque may be negative', () => {
    const duty = sampleDuty({ tag: 'PS-1', run: [-12, 4, 20], start: [6, 12, 30] });
    const texts = torqueLadder({ duty, system: 'si' }).shapes.flatMap((shape) =>
      shape.kind === 'text' ? [shape.text] : [],
    );
    expect(texts.some((words) => words.includes('never take the drive off under load'))).toBe(true);
  });
});

describe('torque ladder with an earlier duty', () => {
  const dashed = (drawing: ReturnType<typeof torqueLadder>) =>
    drawing.shapes.filter((shape) => 'dash' in shape && shape.dash === 'dashed').length;

  it('draws nothing dashed where nothing moved', () => {
    const duty = sampleDuty({ tag: 'GV-1' });
    expect(dashed(torqueLadder({ duty, before: duty, system: 'si' }))).toBe(0);
  });

  it('draws the rungs that moved where they stood, on a scale that holds both, and lets no labels overlap', () => {
    const random = seededRandom(31);
    let moved = 0;
    for (let index = 0; index < 200; index += 1) {
      const before = randomDuty(random, index);
      const drawing = torqueLadder({ duty: randomDuty(random, index), before, system: 'si' });
      moved += dashed(drawing);
      expect(textOverlaps(drawing), `duty ${index}`).toEqual([]);
      for (const shape of drawing.shapes)
        if (shape.kind === 'rect') expect(shape.y + shape.height).toBeLessThanOrEqual(drawing.height);
    }
    expect(moved).toBeGreaterThan(200 * 6);
  });
});

describe('torque scale', () => {
  it.each(['si', 'us'] as const)(
    'is monotone, starts at the bottom, ends below the top and has round ticks in %s units',
    (system) => {
      const random = seededRandom(7);
      const kinds = new Set<string>();
      for (let index = 0; index < 400; index += 1) {
        const top = 10 ** (random() * 4);
        const scale = torqueScale({ values: [top, top * random()], smallest: top / 10 ** (random() * 3), system });
        kinds.add(scale.kind);
        const shares = Array.from({ length: 60 }, (_, step) =>
          scale.share(scale.from + ((scale.to - scale.from) * step) / 59),
        );
        expect(shares[0]).toBeCloseTo(0, 9);
        expect(shares.at(-1)).toBeCloseTo(1, 9);
        for (const [step, share] of shares.entries())
          if (step > 0) expect(share).toBeGreaterThan(shares[step - 1] ?? 0);
        expect(scale.ticks.length).toBeGreaterThanOrEqual(3);
        const heights = scale.ticks.map((tick) => scale.share(tick.torque));
        for (const [step, height] of heights.entries())
          if (step > 0) expect(height - (heights[step - 1] ?? 0)).toBeGreaterThanOrEqual(0.07 - 1e-9);
      }
      expect([...kinds].sort()).toEqual(['linear', 'logarithmic', 'square root']);
    },
  );
});
