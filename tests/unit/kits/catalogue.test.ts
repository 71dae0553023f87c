import { expect, it } from 'vitest';
import { catalogueOf } from '#lib/kits/catalogue.ts';
import { alikeCores } from '#lib/kits/cores/alike-cores.ts';
import { headKind } from '#lib/kits/cores/core-memo.ts';
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

it('frames by drive and head are the same frames', () => {
  const { frames } = catalogueOf(models, { excludedParts: [] });
  const byMating = frames.matings.flatMap(({ uses }) => uses);
  expect(byMating.toSorted((a, b) => a.position - b.position).map(({ frame }) => frame)).toEqual(frames.frames);
});

it('cores that are alike in all but the head are every frame in every gear, once', () => {
  const { frames } = catalogueOf(models, { excludedParts: [] });
  const { alike, counts } = alikeCores(frames);
  const cores = alike.flatMap(({ heads, gearIndex }) => heads.map(({ frame }) => ({ frame, gearIndex })));
  const asked = frames.frames.flatMap((frame) =>
    [...frame.drive.facts.gears.keys()].map((gearIndex) => ({ frame, gearIndex })),
  );
  expect(cores).toHaveLength(asked.length);
  expect(new Set(alike.flatMap(({ heads }) => heads.map(({ place }) => place))).size).toBe(counts.core);
  for (const { drive, limiter, heads, matings } of alike) {
    expect(heads.every(({ frame }) => frame.drive === drive && frame.limiter === limiter)).toBe(true);
    expect(new Set(heads.map(({ frame }) => headKind(frame.head))).size).toBe(1);
    expect(matings).toEqual(heads.map(({ mating }) => mating));
  }
});
