import { describe, expect, it } from 'vitest';
import { sampleSite } from '#lib/rules/sample-facts.ts';
import { NO_TERMS_AGREED } from '#lib/services/customers/customer-facts.ts';
import { priceOutcome } from '#lib/services/quotes/price-outcome.ts';
import { demoHouse, demoModels } from '#seeds/load.ts';

const models = demoModels();
const hired = models.find(({ role }) => role === 'drive')?.number ?? '';

function priceOf(items: readonly { readonly item: string; readonly count: number }[]) {
  return priceOutcome({
    house: demoHouse(),
    models,
    site: sampleSite(),
    agreed: NO_TERMS_AGREED,
    outcome: {
      preference: 'cost',
      fleet: {
        preference: 'cost',
        served: 1,
        asked: 1,
        kits: [],
        work: [],
        cost_minor: 0,
        objective: 0,
        bound: 0,
        gap: 0,
        proof: 'proven',
        effort: {},
      },
      kits: [{ crew: 0, items, time_s: 3600, mass_kg: 1, pieces: 1 }],
      work: [],
      assemblies: {},
      lines: [],
      discrepancies: [],
    },
  });
}

describe('the price of a plan', () => {
  it('is given when the independent check finds the same', () => {
    expect(priceOf([{ item: hired, count: 2 }]).lines[0]).toMatchObject({ kind: 'hire', number: hired, quantity: 2 });
  });

  it('is an incident when the check does not find it: a kit that holds what no catalogue prices is not quoted short', () => {
    expect(() => priceOf([{ item: 'unheard-of', count: 1 }])).toThrow(
      'The independent check does not agree with the price: A kit holds unheard-of, which no catalogue prices.',
    );
  });
});
