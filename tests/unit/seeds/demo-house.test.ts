import { describe, expect, it } from 'vitest';
import { parseHouse } from '#lib/contracts/house.ts';
import { addDays, rangeOfDays } from '#lib/kernel/date-range.ts';
import { freeCount } from '#lib/stock/free-units.ts';
import { UNIT_STATES } from '#lib/stock/unit.ts';
import {
  demoCountedStock,
  demoCustomers,
  demoEnquiries,
  demoHouse,
  demoHouseJson,
  demoModels,
  demoUnits,
} from '#seeds/load.ts';

const ANCHOR = '2030-06-03';

function houseWith(change: (house: Record<string, unknown>) => void): string {
  const house = structuredClone(demoHouseJson()) as Record<string, unknown>;
  change(house);
  const parsed = parseHouse(house);
  return parsed.ok ? 'no error' : parsed.reason.sentence;
}

describe('demo units', () => {
  const units = demoUnits({ anchor: ANCHOR });

  it('several hundred stand in two depots, each with its own serial number and a bay', () => {
    expect(units.length).toBeGreaterThan(400);
    expect(new Set(units.map(({ serial }) => serial)).size).toBe(units.length);
    expect(new Set(units.map(({ depot }) => depot))).toEqual(new Set(demoHouse().depots.map(({ code }) => code)));
    expect(
      units.every(({ bay, state }) => /^[A-G]\d\d$/.test(bay) && UNIT_STATES.some((known) => known === state)),
    ).toBe(true);
  });

  it('the same date gives the same units and another date moves the checks with it', () => {
    expect(demoUnits({ anchor: ANCHOR })).toEqual(units);
    const later = demoUnits({ anchor: addDays(ANCHOR, 100) });
    expect(later.map(({ inspectionDueOn }) => inspectionDueOn)).toEqual(
      units.map(({ inspectionDueOn }) => (inspectionDueOn === null ? null : addDays(inspectionDueOn, 100))),
    );
  });

  it('each model that has serial numbers is free somewhere, at once and two years on', () => {
    for (const start of [ANCHOR, addDays(ANCHOR, 730)]) {
      const free = freeCount({ units, bookings: [], window: rangeOfDays(start, 7), turnaroundDays: 2 });
      const missing = demoModels().filter(
        (model) => !model.counted && !model.madeToOrder && (free.get(model.number) ?? 0) < 2,
      );
      expect(
        missing.map(({ number }) => number),
        start,
      ).toEqual([]);
    }
  });

  it('some checks fall due within weeks, so that stock on a date really differs', () => {
    const soon = units.filter(
      ({ inspectionDueOn }) => inspectionDueOn !== null && inspectionDueOn < addDays(ANCHOR, 120),
    );
    expect(soon.length).toBeGreaterThan(10);
  });

  it('counted items stand on shelves and have no units, made-to-order pieces have neither', () => {
    const withUnits = new Set(units.map(({ model }) => model));
    for (const model of demoModels()) {
      expect(withUnits.has(model.number), model.number).toBe(!model.counted && !model.madeToOrder);
      expect((demoCountedStock()[model.number] ?? 0) > 0, model.number).toBe(model.counted);
    }
  });
});

describe('demo house', () => {
  it('names the field of a wrong value, and a tax category that does not exist', () => {
    expect(
      houseWith((house) => {
        house.turnaround_days = -1;
      }),
    ).toMatch(/^House file, turnaround_days: /);
    expect(
      houseWith((house) => {
        house.tax_of = { hire: 'S', waiver: 'AE', sale: 'S', delivery: 'S', labour: 'S' };
      }),
    ).toBe('House file, tax_of.waiver: names the category AE, which is not listed.');
    expect(
      houseWith((house) => {
        house.tax_categories = [
          { code: 'S', name: 'Standard rate', percent: 21 },
          { code: 'E', name: 'Exempt', percent: 0 },
        ];
      }),
    ).toBe('House file, tax_categories.1.reason: is missing: EN 16931 asks for it where no tax is charged.');
  });

  it('every customer is delivered to by a band of the house and every enquiry is a customer’s', () => {
    const bands = demoHouse().deliveryBands.map(({ id }) => id);
    const customers = demoCustomers();
    expect(customers.every(({ delivery_band }) => bands.includes(delivery_band ?? 'none'))).toBe(true);
    for (const enquiry of demoEnquiries()) {
      expect(
        customers.map(({ code }) => code),
        enquiry.id,
      ).toContain(enquiry.customer);
      expect(enquiry.listText.split('\n').length, enquiry.id).toBeGreaterThan(4);
    }
  });
});
