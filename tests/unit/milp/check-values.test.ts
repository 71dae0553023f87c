import { describe, expect, it } from 'vitest';
import { checkValues } from '#lib/milp/check-values.ts';
import { startModel } from '#lib/milp/sparse-model.ts';

function program() {
  const model = startModel();
  model.column({ cost: 3, lower: 0, upper: 4, integer: true });
  model.column({ cost: 2, lower: 0, upper: 4, integer: false });
  model.row({
    lower: 2,
    upper: 6,
    entries: [
      [0, 1],
      [1, 1],
    ],
  });
  return model.build();
}

describe('checkValues', () => {
  it('rounds what is whole within the tolerance and adds the objective up afresh', () => {
    const checked = checkValues(program(), [1.000004, 1.5]);
    expect(checked).toEqual({ kind: 'sound', values: Float64Array.of(1, 1.5), objective: 6 });
  });

  it.each([
    ['a whole column that is not', [1.4, 1], /no whole number/],
    ['a value outside its bounds', [1, 4.5], /outside its bounds/],
    ['a whole value outside its bounds', [5, 0], /outside 0 to 4/],
    ['a row that is missed from below', [0, 1], /Row 0 is missed by 1/],
    ['a row that is missed from above', [4, 3], /Row 0 is missed by 1/],
    ['a value that is no number', [Number.NaN, 1], /no finite value/],
    ['too few values', [1], /1 values for 2 columns/],
  ])('does not let through %s', (_, values, sentence) => {
    const checked = checkValues(program(), values);
    expect(checked.kind === 'unsound' ? checked.sentence : 'sound').toMatch(sentence);
  });
});
