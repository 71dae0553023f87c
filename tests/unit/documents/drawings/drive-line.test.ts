import { describe, expect, it } from 'vitest';
import { drawingToSvg } from '#lib/documents/drawings/drawing-to-svg.ts';
import { driveLine } from '#lib/documents/drawings/drive-line.ts';
import { extentOf } from '#lib/documents/drawings/shapes.ts';
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { fact } from '#lib/units/known-value.ts';
import { PICTURE_CASES } from '#tests/support/papers/picture-cases.ts';
import { sampleAssembly, sampleDuty, sampleLine } from '#tests/support/papers/sample-duty.ts';
import { SAMPLE_MODELS } from '#tests/support/papers/sample-models.ts';
import { textOverlaps } from '#tests/support/papers/text-overlaps.ts';

const numbersOf = (role: string) => SAMPLE_MODELS.filter((model) => model.role === role).map((model) => model.number);

describe('drive line', () => {
  it.each(PICTURE_CASES.map((one) => [one.name, one.subject] as const))(
    'names every part of the assembly: %s',
    (_, subject) => {
      const drawing = driveLine(subject);
      const texts = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
      const { parts } = subject.assembly;
      for (const number of [
        parts.drive,
        parts.head,
        parts.restraint,
        ...parts.extensions,
        ...parts.options,
        parts.adapters[0] ?? '',
      ])
        expect(
          texts.some((words) => words.includes(number)),
          number,
        ).toBe(true);
    },
  );

  it('keeps labels apart and everything inside the picture for every drive, head, adapter and restraint together', () => {
    let drawn = 0;
    for (const drive of numbersOf('drive')) {
      for (const head of numbersOf('head')) {
        for (const adapter of numbersOf('adapter')) {
          for (const restraint of numbersOf('restraint')) {
            const duty = sampleDuty({ tag: 'GV-1', grip: { stemRisesThroughWheel: 'yes' } });
            const faces = (['up', 'side', 'down'] as const)[drawn % 3] ?? 'up';
            const line = sampleLine('GV-1', {
              place: { faces: fact(faces, { basis: 'stated', source: 'Customer list.' }) },
            });
            const drawing = driveLine({
              duty,
              line,
              assembly: sampleAssembly(duty, {
                drive,
                head,
                adapters: [adapter],
                restraint,
                extensions: drawn % 4 === 0 ? ['E-112', 'E-140'] : [],
                options: ['L-109', 'L-104', 'C-102'],
              }),
              models: SAMPLE_MODELS,
              system: 'si',
            });
            expect(textOverlaps(drawing)).toEqual([]);
            const box = extentOf(drawing.shapes);
            expect(box.x).toBeGreaterThanOrEqual(0);
            expect(box.y).toBeGreaterThanOrEqual(0);
            expect(box.x + box.width).toBeLessThanOrEqual(drawing.width);
            expect(box.y + box.height).toBeLessThanOrEqual(drawing.height);
            drawn += 1;
          }
        }
      }
    }
    expect(drawn).toBe(3 * 3 * 6 * RESTRAINT_KINDS.length);
  });

  it('draws every kind of restraint in a shape of its own', () => {
    const pictures = numbersOf('restraint').map((restraint) => {
      const duty = sampleDuty({ tag: 'GV-1' });
      const drawing = driveLine({
        duty,
        line: sampleLine('GV-1'),
        assembly: sampleAssembly(duty, { restraint }),
        models: SAMPLE_MODELS,
        system: 'si',
      });
      return JSON.stringify(drawing.shapes.filter((shape) => shape.kind !== 'text'));
    });
    expect(new Set(pictures).size).toBe(RESTRAINT_KINDS.length);
  });

  it('says so when a part is not in the catalogue given, and never shows a drive without naming the restraint', () => {
    const duty = sampleDuty({ tag: 'GV-1' });
    const drawing = driveLine({
      duty,
      line: sampleLine('GV-1'),
      assembly: sampleAssembly(duty, { restraint: 'R-999' }),
      models: SAMPLE_MODELS,
      system: 'si',
    });
    const texts = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])).join('\n');
    expect(texts).toContain('R-999');
    expect(texts).toContain('never hold a powered drive by hand alone');
  });

  it('does not draw a turning arrow when the closing direction is unknown', () => {
    const duty = sampleDuty({ tag: 'GV-1', closes: 'unknown' });
    const drawing = driveLine({
      duty,
      line: sampleLine('GV-1'),
      assembly: sampleAssembly(duty, { head: 'H-118', options: [] }),
      models: SAMPLE_MODELS,
      system: 'si',
    });
    expect(drawing.description).toContain('Closing direction not known');
    expect(drawing.description).not.toContain('Closes clockwise');
    expect(
      drawing.shapes.some((shape) => shape.kind === 'path' && shape.stroke === 'accent' && shape.weight === 'wide'),
    ).toBe(false);
  });

  it('breaks a long list of what goes with it into lines inside the picture', () => {
    const duty = sampleDuty({ tag: 'GV-1' });
    const accessories = Array.from({ length: 9 }, (_, index) => ({
      number: `S-${900 + index}-with-a-long-number`,
      count: index + 1,
    }));
    const drawing = driveLine({
      duty,
      line: sampleLine('GV-1'),
      assembly: sampleAssembly(duty, { accessories }),
      models: SAMPLE_MODELS,
      system: 'si',
    });
    expect(textOverlaps(drawing)).toEqual([]);
    const texts = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])).join(' ');
    for (const { number } of accessories) expect(texts).toContain(number);
  });

  it('becomes an SVG with a title and a description, every text escaped and every role a class', () => {
    const [first] = PICTURE_CASES;
    const svg = drawingToSvg(driveLine({ ...first.subject, line: { ...first.subject.line, tag: 'A<&>"1' } }));
    expect(svg).toContain('<title id="drawing-title">Drive line for A&lt;&amp;&gt;&quot;1</title>');
    expect(svg).toContain('role="img"');
    expect(svg).not.toMatch(/fill="#|stroke="#/);
  });
});
