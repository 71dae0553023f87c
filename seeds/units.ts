/*
 * Makes the serial-numbered units of the demo house for a date.
 * Invariant: the same date gives the same units; no check is overdue on that date, and most fall due years later, so that the demo lasts.
 * Not here: counted items (they have no serial numbers) and made-to-order pieces (they do not exist yet).
 * Read next: load.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import type { Unit } from '#lib/stock/unit.ts';

const DEPOTS = ['VEN', 'HAL'] as const;
const SEED = 41_907;
/** Of the pieces after the first two of a model one check in eight falls due within weeks, so that a hire may meet one; the others leave a demo house usable for years. */
const SOON_SHARE = 1 / 8;
const KEPT_READY = 2;
const SOON_DAYS = { least: 6, spread: 110 };
const LATER_DAYS = { least: 1100, spread: 1400 };

/** Two depots, bays by role (A drives … G accessories), every fortieth piece held back. */
export function makeUnits({
  models,
  anchor,
}: {
  readonly models: readonly Model[];
  readonly anchor: IsoDate;
}): readonly Unit[] {
  const random = seededRandom(SEED);
  return models
    .filter((model) => !model.counted && !model.madeToOrder)
    .flatMap((model) =>
      Array.from({ length: piecesOf(model) }, (_, index) => makeUnit({ model, index, anchor, random })),
    );
}

/** Small and cheap parts stand in greater numbers than heavy machines. */
function piecesOf(model: Model): number {
  if (model.role === 'drive') return model.facts.dutyClass === 'heavy' ? 3 : 5;
  if (model.role === 'accessory')
    return model.facts.kind === 'spare pack' ? 10 : model.facts.kind === 'air hose' ? 8 : 5;
  if (model.role === 'adapter' || model.role === 'option') return 5;
  return model.mass > 15 ? 3 : 4;
}

interface MakeUnit {
  readonly model: Model;
  readonly index: number;
  readonly anchor: IsoDate;
  readonly random: Random;
}

function makeUnit({ model, index, anchor, random }: MakeUnit): Unit {
  const depot = DEPOTS[index % 3 === 2 ? 1 : 0] ?? DEPOTS[0];
  const draw = random();
  const inspected =
    model.role === 'restraint' || model.role === 'drive' || model.role === 'option' || isChainOrSling(model);
  return {
    serial: `${model.number.replace('-', '')}-${String(index + 1).padStart(2, '0')}`,
    model: model.number,
    depot,
    bay: `${bayRow(model)}${String(1 + Math.floor(random() * 18)).padStart(2, '0')}`,
    state: index < KEPT_READY || draw > 0.05 ? 'ready' : draw > 0.025 ? 'workshop' : 'quarantine',
    inspectionDueOn: inspected ? addDays(anchor, dueIn({ index, random })) : null,
    calibrationDueOn: needsCalibration(model) ? addDays(anchor, dueIn({ index, random })) : null,
  };
}

function dueIn({ index, random }: { readonly index: number; readonly random: Random }): number {
  const span = random() < SOON_SHARE && index >= KEPT_READY ? SOON_DAYS : LATER_DAYS;
  return span.least + Math.floor(random() * span.spread);
}

function needsCalibration(model: Model): boolean {
  if (model.role === 'option') return model.facts.kind === 'torque limiter';
  return model.role === 'drive' && model.facts.limiter !== null;
}

function isChainOrSling(model: Model): boolean {
  return model.role === 'accessory' && (model.facts.kind === 'second chain' || model.facts.kind === 'sling support');
}

function bayRow(model: Model): string {
  switch (model.role) {
    case 'drive':
      return 'A';
    case 'head':
      return 'B';
    case 'adapter':
      return 'C';
    case 'extension':
      return 'D';
    case 'restraint':
      return 'E';
    case 'option':
      return 'F';
    case 'accessory':
      return 'G';
  }
}
