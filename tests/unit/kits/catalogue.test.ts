import { expect, it } from 'vitest';
import { catalogueOf } from '#lib/kits/catalogue.ts';
import { plausibleCatalogue } from '#tests/support/kits/plausible-catalogue.ts';

const { models } = plausibleCatalogue({ seed: 60, models: 60 });

it('a list of models is made ready once, whatever the order in which parts are left out', () => {
  const whole = catalogueOf(models, { excludedParts: [] });
  expect(catalogueOf(models, { excludedParts: [] })).toBe(whole);
  const less = catalogueOf(models, { excludedParts: ['D-1', 'H-1'] });
  expect(catalogueOf(models, { excludedParts: ['H-1', 'D-1'] })).toBe(less);
  expect(less.stock.all).toHaveLength(models.length - 2);
  expect(whole.stock.all).toHaveLength(models.length);
});

it('an equal list of other models is another catalogue', () => {
  const other = models.map((model) => ({ ...model }));
  expect(catalogueOf(other, { excludedParts: [] })).not.toBe(catalogueOf(models, { excludedParts: [] }));
});

it('no more than eight sets of left-out parts are kept, the oldest goes first', () => {
  const first = catalogueOf(models, { excludedParts: ['D-0'] });
  for (const number of ['1', '2', '3', '4', '5', '6', '7', '8'])
    catalogueOf(models, { excludedParts: [`A-${number}`] });
  expect(catalogueOf(models, { excludedParts: ['D-0'] })).not.toBe(first);
});

it('frames by drive and head, and by what joins them, are the same frames', () => {
  const { frames } = catalogueOf(models, { excludedParts: [] });
  const byMating = frames.matings.flatMap(({ uses }) => uses);
  expect(byMating.toSorted((a, b) => a.position - b.position).map(({ frame }) => frame)).toEqual(frames.frames);
  const byPartner = [...frames.byPartner.values()].flat();
  expect(new Set(byPartner)).toEqual(new Set(frames.frames));
  expect(byPartner).toHaveLength(frames.frames.length);
});
