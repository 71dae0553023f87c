import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPacking } from '#lib/checking/check-packing.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import { packCases } from '#lib/packing/pack-cases.ts';
import { type Piece, pieceOf } from '#lib/packing/piece.ts';
import { kilograms } from '#lib/units/quantity.ts';
import { demoModels } from '#seeds/load.ts';

const MODELS = demoModels();
const CASES = caseKinds(MODELS);
const volume = (size: { readonly length: number; readonly width: number; readonly height: number }): number =>
  size.length * size.width * size.height;

interface Alone {
  readonly piece: Piece;
  readonly one: (typeof CASES)[number];
  readonly limit: number;
}

/** Would one person's case take it with nothing else. */
function goesAlone({ piece, one, limit }: Alone): boolean {
  const room = edges(one.size);
  return (
    one.mass + piece.mass <= limit + 1e-9 &&
    volume(piece.size) <= 0.7 * volume(one.size) + 1e-9 &&
    edges(piece.size).every((edge, at) => edge <= (room[at] ?? 0) + 1e-9)
  );
}

function edges({ length, width, height }: Piece['size']): readonly number[] {
  return [length, width, height].sort((a, b) => b - a);
}

/** HSE L23: 16 and 25 kg for one, two thirds of 50 kg for two. On the very edge sums may fall either way. */
function markFor(mass: number): string {
  if (mass <= 16 + 1e-9) return 'one person';
  if (mass <= 25 + 1e-9) return 'one person, near the limit';
  return mass <= 100 / 3 + 1e-9 ? 'two persons' : 'lifting aid';
}

describe('packing', () => {
  it('loses and doubles no piece, keeps every case under the limit and its volume, and sends loose only what fits no empty case', () => {
    let checked = 0;
    let cased = 0;
    const picks = fc.array(fc.integer({ min: 0, max: MODELS.length - 1 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(picks, fc.integer({ min: 12, max: 40 }), (chosen, limit) => {
        const pieces = chosen.flatMap((at, index) => {
          const model = MODELS[at];
          return model === undefined ? [] : [pieceOf({ model, serial: `N${index}` })];
        });
        const packed = packCases({ pieces, liftLimit: kilograms(limit), cases: CASES, transport: 'road' }).cases;
        expect(packed.flatMap((each) => each.pieces.map(({ serial }) => serial)).sort()).toEqual(
          pieces.map(({ serial }) => serial).sort(),
        );
        const items = chosen.flatMap((at) => MODELS[at]?.number ?? []).map((item) => ({ item, count: 1 }));
        expect(checkPacking({ items, models: MODELS, liftLimit: limit, cases: CASES, packed })).toEqual([]);
        for (const each of packed) {
          const kind = CASES.find(({ name }) => name === each.name);
          if (kind === undefined) {
            expect(each.pieces.length).toBe(1);
            const [piece] = each.pieces;
            if (piece !== undefined) {
              const alone = packCases({
                pieces: [piece],
                liftLimit: kilograms(limit),
                cases: CASES,
                transport: 'road',
              }).cases;
              expect(alone[0]?.name).toBe('loose');
            }
          } else {
            const forTwo = each.pieces.some((piece) => !CASES.some((one) => goesAlone({ piece, one, limit })));
            expect(each.mass).toBeLessThanOrEqual((forTwo ? Math.max(limit, 100 / 3) : limit) + 1e-9);
            expect(each.centre).toBeLessThan(kind.size.height / 2);
            expect(each.lift.mark).toBe(markFor(each.mass));
            expect(each.pieces.reduce((sum, { size }) => sum + volume(size), 0)).toBeLessThanOrEqual(volume(kind.size));
            cased += 1;
          }
          checked += 1;
        }
      }),
      { seed: 7_301, numRuns: 150 },
    );
    process.stdout.write(`packing: ${checked} cases and loose pieces checked\n`);
    expect(cased).toBeGreaterThan(100);
  });
});
