/** Writes every picture case as PNG for a person to look at: `node --import tsx tests/support/papers/draw-contact-sheet.ts FOLDER` (needs rsvg-convert). */
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { drawingToSvg } from '#lib/documents/drawings/drawing-to-svg.ts';
import { driveLine } from '#lib/documents/drawings/drive-line.ts';
import { torqueLadder } from '#lib/documents/drawings/torque-ladder.ts';
import { PICTURE_CASES } from './picture-cases.ts';
import { sampleAssembly, sampleDuty } from './sample-duty.ts';
import { SAMPLE_MODELS } from './sample-models.ts';

const folder = process.argv[2] ?? '.reports/pictures';
mkdirSync(folder, { recursive: true });

const ladders = [
  sampleDuty({ tag: 'GV-101' }),
  sampleDuty({ tag: 'GV-wide', run: [2, 5, 9], start: [6, 14, 30], never: 450 }),
  sampleDuty({
    tag: 'GV-none',
    run: [80, 140, 220],
    start: [150, 260, 420],
    never: 210,
    limiterFits: 'no',
    otherBounds: [
      ['wheel', 230],
      ['spokes', 240],
      ['hand force', 250],
      ['gearbox input', 260],
      ['end stop', 265],
      ['flange', 900],
    ],
  }),
];
const pictures = [
  ...PICTURE_CASES.map((one, index) => ({
    name: `line-${String(index + 1).padStart(2, '0')}`,
    drawing: driveLine(one.subject),
  })),
  ...ladders.map((duty, index) => ({
    name: `ladder-${index + 1}`,
    drawing: torqueLadder({
      duty,
      ...(index === 1 ? {} : { assembly: sampleAssembly(duty, {}), models: SAMPLE_MODELS }),
      system: index === 1 ? 'us' : 'si',
    }),
  })),
];
/** Six pictures a sheet, two across. */
const PER_SHEET = 6;
for (let first = 0; first < pictures.length; first += PER_SHEET) {
  const cells = pictures.slice(first, first + PER_SHEET).map(({ drawing }, index) => {
    const svg = drawingToSvg(drawing, `d${first + index}`).replace(/var\(--kw-[a-z-]+, (#[0-9a-f]{6})\)/g, '$1');
    return svg.replace(
      '<svg ',
      `<svg x="${(index % 2) * 540 + 10}" y="${Math.floor(index / 2) * 390 + 10}" width="${drawing.width}" height="${drawing.height}" `,
    );
  });
  const file = path.join(folder, `sheet-${first / PER_SHEET + 1}`);
  writeFileSync(
    `${file}.svg`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="1080" height="1180"><rect width="100%" height="100%" fill="#fff"/>${cells.join('')}</svg>`,
  );
  execFileSync('rsvg-convert', ['-z', '1.4', '-o', `${file}.png`, `${file}.svg`]);
}
