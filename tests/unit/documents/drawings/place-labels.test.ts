import { describe, expect, it } from 'vitest';
import { neededHeight, placeLabels } from '#lib/documents/drawings/place-labels.ts';
import { seededRandom } from '#lib/kernel/random.ts';

describe('placing labels along a column', () => {
  it('leaves a label where it wants to be when nothing is near', () => {
    expect(
      placeLabels(
        [
          { wanted: 50, height: 10 },
          { wanted: 120, height: 10 },
        ],
        { from: 0, to: 200, gap: 2 },
      ),
    ).toEqual([50, 120]);
  });

  it('moves two labels that want the same place equally far apart', () => {
    expect(
      placeLabels(
        [
          { wanted: 50, height: 10 },
          { wanted: 50, height: 10 },
        ],
        { from: 0, to: 200, gap: 2 },
      ),
    ).toEqual([44, 56]);
  });

  it('pushes labels back inside the column', () => {
    expect(
      placeLabels(
        [
          { wanted: -30, height: 10 },
          { wanted: 500, height: 10 },
        ],
        { from: 0, to: 100, gap: 2 },
      ),
    ).toEqual([5, 95]);
  });

  it('never overlaps, keeps the order and stays inside over random columns that have room', () => {
    const random = seededRandom(11);
    let checked = 0;
    for (let round = 0; round < 2000; round += 1) {
      const blocks = Array.from({ length: 1 + Math.floor(random() * 12) }, () => ({
        wanted: random() * 300 - 40,
        height: 6 + random() * 20,
      }));
      const column = { from: 0, to: Math.max(220, neededHeight(blocks, 3)), gap: 3 };
      const placed = placeLabels(blocks, column);
      const spans = blocks
        .map((block, index) => ({
          wanted: block.wanted,
          top: (placed[index] ?? 0) - block.height / 2,
          bottom: (placed[index] ?? 0) + block.height / 2,
        }))
        .sort((a, b) => a.top - b.top);
      spans.forEach((span, index) => {
        expect(span.top).toBeGreaterThanOrEqual(column.from - 1e-6);
        expect(span.bottom).toBeLessThanOrEqual(column.to + 1e-6);
        const next = spans[index + 1];
        if (next !== undefined) {
          expect(next.top - span.bottom).toBeGreaterThanOrEqual(3 - 1e-6);
          expect(next.wanted).toBeGreaterThanOrEqual(span.wanted);
          checked += 1;
        }
      });
    }
    expect(checked).toBeGreaterThan(5000);
  });
});
