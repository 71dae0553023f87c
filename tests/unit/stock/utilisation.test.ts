import { describe, expect, it } from 'vitest';
import type { Unit } from '#lib/stock/unit.ts';
import { overDepots, utilisation } from '#lib/stock/utilisation.ts';
import { readyUnit } from '#tests/support/stock/ready-unit.ts';

const window = { starts_on: '2026-03-01', ends_before: '2026-03-11' };

function unit(serial: string, more: Partial<Unit> = {}): Unit {
  const [model = ''] = serial.split('-');
  return readyUnit(serial, { model, depot: 'N', ...more });
}

function booked(serial: string, starts_on: string, ends_before: string) {
  return { serial, window: { starts_on, ends_before } };
}

describe('how much of the equipment is out', () => {
  it('counts booked days over owned days, half-open', () => {
    const rows = utilisation({
      units: [unit('D1-01'), unit('D1-02')],
      bookings: [booked('D1-01', '2026-03-02', '2026-03-07')],
      window,
    });
    expect(rows).toEqual([{ model: 'D1', depot: 'N', units: 2, bookedDays: 5, unitDays: 20, share: 0.25 }]);
  });

  it('counts only the days inside the window, and a day once however many rows name it', () => {
    const [row] = utilisation({
      units: [unit('D1-01')],
      bookings: [
        booked('D1-01', '2026-02-20', '2026-03-03'),
        booked('D1-01', '2026-03-02', '2026-03-04'),
        booked('D1-01', '2026-03-10', '2026-04-01'),
        booked('D1-01', '2026-05-01', '2026-05-03'),
      ],
      window,
    });
    expect(row?.bookedDays).toBe(4);
  });

  it('a unit in the workshop is owned and idle; one that is lost or retired is not owned', () => {
    const [row] = utilisation({
      units: [
        unit('D1-01', { state: 'workshop' }),
        unit('D1-02', { state: 'lost' }),
        unit('D1-03', { state: 'retired' }),
      ],
      bookings: [booked('D1-02', '2026-03-01', '2026-03-11')],
      window,
    });
    expect(row).toMatchObject({ units: 1, bookedDays: 0 });
  });

  it('keeps depots apart, and adds them up where all are asked for', () => {
    const rows = utilisation({
      units: [unit('D1-01'), unit('D1-02', { depot: 'S' }), unit('H2-01')],
      bookings: [booked('D1-02', '2026-03-01', '2026-03-11')],
      window,
    });
    expect(rows.map(({ model, depot, share }) => [model, depot, share])).toEqual([
      ['D1', 'S', 1],
      ['D1', 'N', 0],
      ['H2', 'N', 0],
    ]);
    expect(overDepots(rows)[0]).toMatchObject({ model: 'D1', units: 2, bookedDays: 10, unitDays: 20, share: 0.5 });
  });
});
