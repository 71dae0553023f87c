import { describe, expect, it } from 'vitest';
import { modelPicture } from '#lib/documents/drawings/model-picture.ts';
import { extentOf } from '#lib/documents/drawings/shapes.ts';
import { gearRows, torqueSpeedChart } from '#lib/documents/drawings/torque-speed-chart.ts';
import type { DriveModel } from '#lib/equipment/model.ts';
import { demoModels } from '#seeds/load.ts';

const MODELS = demoModels();
const drives = MODELS.filter((model): model is DriveModel => model.role === 'drive');

describe('the picture of a model', () => {
  it('is drawn for every model of the catalogue, inside its frame, in both unit systems', () => {
    for (const model of MODELS) {
      for (const system of ['si', 'us'] as const) {
        const { width, height, shapes, description } = modelPicture(model, system);
        const box = extentOf(shapes);
        expect(shapes.length, model.number).toBeGreaterThan(5);
        expect(box.x, model.number).toBeGreaterThanOrEqual(0);
        expect(box.y, model.number).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width, model.number).toBeLessThanOrEqual(width);
        expect(box.y + box.height, model.number).toBeLessThanOrEqual(height);
        expect(JSON.stringify(shapes)).not.toMatch(/NaN|Infinity/);
        if (system === 'us') expect(description).not.toMatch(/\d mm\b/);
      }
    }
    expect(MODELS.length).toBeGreaterThan(100);
  });

  it('tells its sizes to one scale', () => {
    const plate = MODELS.find(({ number }) => number === 'H-323');
    if (plate === undefined) return expect.fail('H-323 is not in the demo house.');
    const { description } = modelPicture(plate, 'si');
    expect(description).toMatch(/height \d+ mm; swing radius \d+ mm; bore 60 mm/);
    expect(description).toContain('Right: to the scale of its bar.');
  });
});

describe('the torque–speed chart', () => {
  it('has every gear, inside its frame, for every drive and both unit systems', () => {
    for (const drive of drives) {
      for (const system of ['si', 'us'] as const) {
        const chart = torqueSpeedChart(drive, system);
        const box = extentOf(chart.shapes);
        expect(box.x + box.width).toBeLessThanOrEqual(chart.width);
        expect(box.y + box.height).toBeLessThanOrEqual(chart.height);
        expect(JSON.stringify(chart.shapes)).not.toMatch(/NaN|Infinity/);
        for (const gear of drive.facts.gears) expect(chart.description).toContain(`Gear ${gear.name}:`);
      }
    }
    expect(drives.length).toBeGreaterThan(10);
  });

  it('tells speed and power at rated torque by the straight line from free speed to stall', () => {
    const drive = drives.find(({ number }) => number === 'D-112');
    if (drive === undefined) return expect.fail('D-112 is not in the demo house.');
    // Linear machine T/Ts + n/n0 = 1 (Bakshi & Bakshi, DC Machines and Synchronous Machines, Example 2.39):
    // 66·(1 − 29/56) = 31.8 1/min, and 29 N·m · 31.8 1/min · 2π/60 = 96.6 W.
    expect(gearRows(drive, 'si')[0]).toEqual({
      name: 'low',
      stall: '56 N·m',
      rated: '29 N·m',
      freeSpeed: '66 1/min',
      speedAtRated: '31.8 1/min',
      powerAtRated: '96.6 W',
    });
    expect(gearRows(drive, 'us')[0]).toMatchObject({ stall: '41.3 lbf·ft', powerAtRated: '0.13 hp' });
  });
});
