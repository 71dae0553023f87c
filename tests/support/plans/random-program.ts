/*
 * Small random integer programs, with or without alike owners, and their best points by trying every whole point.
 */
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { type Entry, type Row, type SparseModel, startModel } from '#lib/milp/sparse-model.ts';

interface Ranged {
  readonly from: number;
  readonly to: number;
}

function whole(random: Random, { from, to }: Ranged): number {
  return from + Math.floor(random() * (to - from + 1));
}

/** Two to six whole columns within narrow bounds, one to five rows; four in five are written around a point that meets them. */
export function randomProgram(seed: number): SparseModel {
  const random = seededRandom(seed);
  const model = startModel();
  const isAroundPoint = random() < 0.8;
  const point = Array.from({ length: whole(random, { from: 2, to: 6 }) }, () => {
    const lower = whole(random, { from: -1, to: 1 });
    const upper = lower + whole(random, { from: 0, to: 3 });
    model.column({ cost: whole(random, { from: -9, to: 9 }), lower, upper, integer: true });
    return whole(random, { from: lower, to: upper });
  });
  const rows = whole(random, { from: 1, to: 5 });
  for (let row = 0; row < rows; row += 1) {
    const entries = point.map((_, column): Entry => [column, whole(random, { from: -4, to: 6 })]);
    const met = entries.reduce((sum, [column, value]) => sum + value * (point[column] ?? 0), 0);
    model.row({ ...sides(random, isAroundPoint ? met : whole(random, { from: -2, to: 12 })), entries });
  }
  return model.build();
}

function sides(random: Random, at: number): Pick<Row, 'lower' | 'upper'> {
  const kind = random();
  const room = whole(random, { from: 0, to: 3 });
  if (kind < 0.4) return { lower: Number.NEGATIVE_INFINITY, upper: at + room };
  if (kind < 0.75) return { lower: at - room, upper: Number.POSITIVE_INFINITY };
  if (kind < 0.85) return { lower: at, upper: at };
  return { lower: at - 4, upper: at + room };
}

/** Covering triples of 45 points: easy to state, slow to close. All ones meets it. */
export function coveringProgram(): SparseModel {
  const model = startModel();
  const points = 45;
  for (let point = 0; point < points; point += 1) model.column({ cost: 1, lower: 0, upper: 1, integer: true });
  for (let a = 0; a < points; a += 1) {
    for (const [b, c] of [
      [1, 5],
      [2, 13],
      [7, 19],
      [3, 22],
    ] as const) {
      const entries = [a, (a + b) % points, (a + c) % points].map((point) => [point, 1] as const);
      model.row({ lower: 1, upper: 3, entries });
    }
  }
  return model.build();
}

export interface Owned {
  readonly model: SparseModel;
  /** A row for each thing, in it a column for each owner. */
  readonly groups: readonly (readonly number[])[];
}

/** Two or three owners of two to four things, all told alike: exchanging owners gives the same program. */
export function ownedProgram(seed: number): Owned {
  const random = seededRandom(seed);
  const model = startModel();
  const owners = whole(random, { from: 2, to: 3 });
  const things = whole(random, { from: 2, to: owners === 2 ? 5 : 4 });
  const groups = Array.from({ length: things }, () => {
    const cost = whole(random, { from: 1, to: 20 });
    return Array.from({ length: owners }, () => model.column({ cost, lower: 0, upper: 1, integer: true }));
  });
  const weights = groups.map(() => whole(random, { from: 1, to: 9 }));
  const entryOf = (columns: readonly number[], value: number) => columns.map((column): Entry => [column, value]);
  // What each owner can hold, alike for all.
  const room = whole(random, { from: 5, to: 16 });
  for (let owner = 0; owner < owners; owner += 1) {
    const entries = groups.flatMap((columns, thing) => entryOf([columns[owner] ?? -1], weights[thing] ?? 0));
    model.row({ lower: Number.NEGATIVE_INFINITY, upper: room, entries });
  }
  // What all owners must have together.
  for (let row = 0; row < whole(random, { from: 1, to: 3 }); row += 1) {
    const entries = groups.flatMap((columns) => entryOf(columns, whole(random, { from: 0, to: 5 })));
    model.row({ lower: whole(random, { from: 3, to: 20 }), upper: Number.POSITIVE_INFINITY, entries });
  }
  return { model: model.build(), groups };
}

export interface BestPoint {
  /** Infinite when there is no point. */
  readonly objective: number;
  readonly points: number;
}

export function enumerateProgram(model: SparseModel): BestPoint {
  const point: number[] = [];
  let objective = Number.POSITIVE_INFINITY;
  let points = 0;
  const place = (column: number): void => {
    if (column === model.columns) {
      points += 1;
      if (meetsRows(model, point)) objective = Math.min(objective, costOf(model, point));
      return;
    }
    for (let value = model.columnLower[column] ?? 0; value <= (model.columnUpper[column] ?? -1); value += 1) {
      point[column] = value;
      place(column + 1);
    }
  };
  place(0);
  return { objective, points };
}

function costOf(model: SparseModel, point: readonly number[]): number {
  return point.reduce((sum, value, column) => sum + value * (model.cost[column] ?? Number.NaN), 0);
}

/** Coefficients are whole, so the sums are exact. */
export function meetsRows(model: SparseModel, point: ArrayLike<number>): boolean {
  for (let row = 0; row < model.rows; row += 1) {
    let sum = 0;
    for (let entry = model.rowStart[row] ?? 0; entry < (model.rowStart[row + 1] ?? 0); entry += 1) {
      sum += (model.entryValue[entry] ?? Number.NaN) * (point[model.entryColumn[entry] ?? -1] ?? Number.NaN);
    }
    if (!(sum >= (model.rowLower[row] ?? Number.NaN) && sum <= (model.rowUpper[row] ?? Number.NaN))) return false;
  }
  return true;
}
