/*
 * What else stands in the demo yard: the bays of both depots, the boxes of counted pieces, and what each unit has behind it.
 * Invariant: the same units and date give the same yard; certificates are older than the date, and drives alone have run.
 * Not here: the units themselves (units.ts).
 * Read next: load.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { seededRandom } from '#lib/kernel/random.ts';
import type { Unit } from '#lib/stock/unit.ts';

const SEED = 7_113;
/** Boxes of counted pieces stand in the last row of bays. */
const COUNTED_ROW = 'H';
/** Of the pieces of a counted model two thirds lie at the first depot. */
const SHELVES = [
  { depot: 'VEN', count: 40 },
  { depot: 'HAL', count: 20 },
] as const;

export interface DemoShelf {
  readonly model: string;
  readonly depot: string;
  readonly bay: string;
  readonly count: number;
}

export function makeShelves(models: readonly Model[]): readonly DemoShelf[] {
  return models
    .filter((model) => model.counted)
    .flatMap(({ number }, index) =>
      SHELVES.map(({ depot, count }) => ({
        model: number,
        depot,
        bay: `${COUNTED_ROW}${String(index + 1).padStart(2, '0')}`,
        count,
      })),
    );
}

export interface DemoBay {
  readonly depot: string;
  readonly code: string;
  readonly walkOrder: number;
}

/** Rows are walked one up, the next one down, as one would. */
export function makeBays(stand: readonly { readonly depot: string; readonly bay: string }[]): readonly DemoBay[] {
  const depots = [...new Set(stand.map(({ depot }) => depot))];
  return depots.flatMap((depot) => {
    const codes = [...new Set(stand.filter((one) => one.depot === depot).map(({ bay }) => bay))];
    return codes
      .toSorted((a, b) => (walkKey(a) < walkKey(b) ? -1 : 1))
      .map((code, index) => ({ depot, code, walkOrder: index + 1 }));
  });
}

/** A01…A18, then B18…B01, and so on. */
function walkKey(code: string): string {
  const row = code.slice(0, 1);
  const place = Number(code.slice(1));
  const back = (row.codePointAt(0) ?? 0) % 2 === 0;
  return `${row}${String(back ? 99 - place : place).padStart(2, '0')}`;
}

export interface DemoPast {
  readonly serial: string;
  readonly inspectionDoneOn: IsoDate | null;
  readonly calibrationDoneOn: IsoDate | null;
  readonly runHours: number;
}

export function makePast({
  units,
  models,
  anchor,
}: {
  readonly units: readonly Unit[];
  readonly models: readonly Model[];
  readonly anchor: IsoDate;
}): readonly DemoPast[] {
  const random = seededRandom(SEED);
  const drives = new Set(models.filter(({ role }) => role === 'drive').map(({ number }) => number));
  return units.map((unit) => {
    const [inspected, calibrated, ran] = [random(), random(), random()];
    return {
      serial: unit.serial,
      inspectionDoneOn: unit.inspectionDueOn === null ? null : addDays(anchor, -5 - Math.floor(inspected * 170)),
      calibrationDoneOn: unit.calibrationDueOn === null ? null : addDays(anchor, -5 - Math.floor(calibrated * 170)),
      runHours: drives.has(unit.model) ? Math.round(ran * 2400) / 10 : 0,
    };
  });
}
