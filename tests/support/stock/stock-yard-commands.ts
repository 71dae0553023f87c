/*
 * Random work of the warehouse: transfers between depots, stocktakes, and hands that set a unit aside or ready again.
 */
import fc from 'fast-check';
import { addDays } from '#lib/kernel/date-range.ts';
import { arriveTransfer } from '#lib/services/stock/arrive-transfer.ts';
import { changeUnitState } from '#lib/services/stock/change-unit-state.ts';
import { closeStocktake } from '#lib/services/stock/close-stocktake.ts';
import { openStocktake } from '#lib/services/stock/open-stocktake.ts';
import { countStocktake, scanStocktake } from '#lib/services/stock/scan-stocktake.ts';
import { sendTransfer } from '#lib/services/stock/send-transfer.ts';
import { granted } from '../granted.ts';
import { agree, command, count } from './stock-commands.ts';
import { dayOf, HOLDING, lapse, type World, type WorldUnit } from './stock-world.ts';

const SENDABLE = ['ready', 'back', 'quarantine', 'workshop'];

const unitAt = (world: World, index: number): WorldUnit => {
  const unit = world.units[index % world.units.length];
  if (!unit) throw new Error('The model has no units.');
  return unit;
};

export const send = fc.record({ at: fc.nat({ max: 7 }), days: fc.integer({ min: 1, max: 4 }) }).map(({ at, days }) =>
  command(`send ${at} ${days}`, (world, house) => {
    lapse(world);
    const unit = unitAt(world, at);
    const to = unit.depot === 'VEN' ? 'HAL' : 'VEN';
    const dueOn = addDays(dayOf(world), days);
    const asked = { from: unit.depot, to, dueOn, serials: [unit.serial], items: [], note: '' };
    const right =
      SENDABLE.includes(unit.state) &&
      !world.transfers.some(({ open, serial }) => open && serial === unit.serial) &&
      !world.rows.some((row) => row.serial === unit.serial && HOLDING.includes(row.state) && row.starts_on < dueOn);
    const answer = sendTransfer(house.context(), asked);
    agree('send', { right, answer });
    if (!answer.ok) return;
    world.transfers.push({
      number: answer.value.number,
      serial: unit.serial,
      sentOn: dayOf(world),
      dueOn,
      to,
      open: true,
    });
    const state = unit.state === 'ready' || unit.state === 'back' ? 'on the way' : unit.state;
    Object.assign(unit, { depot: to, bay: '', state });
  }),
);

export const arrive = fc.nat({ max: 5 }).map((at) =>
  command(`arrive ${at}`, (world, house) => {
    const open = world.transfers.filter((one) => one.open);
    const transfer = open[at % Math.max(1, open.length)];
    if (!transfer) return;
    const bay = house.bays[transfer.to] ?? '';
    const units = [{ serial: transfer.serial, bay }];
    granted(arriveTransfer(house.context(), { number: transfer.number, units, items: [], lost: [] }));
    transfer.open = false;
    const unit = world.units.find(({ serial }) => serial === transfer.serial);
    if (unit) Object.assign(unit, { bay, state: unit.state === 'on the way' ? 'ready' : unit.state });
    count('arrive: done');
  }),
);

/** Everything that stands in the bay is scanned, but one piece, which is given up; pegs are counted anew. */
export const stocktake = fc
  .record({ missing: fc.nat({ max: 12 }), pieces: fc.nat({ max: 12 }) })
  .map(({ missing, pieces }) =>
    command(`stocktake ${missing} ${pieces}`, (world, house) => {
      const bay = house.bays.VEN ?? '';
      const context = house.context();
      const standing = world.units.filter(
        (unit) =>
          unit.depot === 'VEN' && unit.bay === bay && !['out', 'on the way', 'lost', 'retired'].includes(unit.state),
      );
      const gone = standing[missing];
      const { number } = granted(openStocktake(context, { depot: 'VEN', bay }));
      for (const unit of standing)
        if (unit !== gone) granted(scanStocktake(context, { number, code: unit.serial, bay }));
      granted(countStocktake(context, { number, model: house.counted, count: pieces }));
      const lost = gone === undefined ? [] : [{ serial: gone.serial, reason: 'model' }];
      granted(closeStocktake(context, { number, lost }));
      if (gone) gone.state = 'lost';
      world.shelves.set('VEN', pieces);
      count('stocktake: done');
    }),
  );

export const hands = fc.record({ at: fc.nat({ max: 7 }), ready: fc.boolean() }).map(({ at, ready }) =>
  command(`hands ${at} ${ready ? 'ready' : 'quarantine'}`, (world, house) => {
    const unit = unitAt(world, at);
    const to = ready ? 'ready' : 'quarantine';
    const overdue = unit.dueOn !== null && unit.dueOn <= dayOf(world);
    const right = unit.state !== to && unit.state !== 'on the way' && unit.state !== 'out' && !(ready && overdue);
    agree('hands', { right, answer: changeUnitState(house.context(), { serial: unit.serial, to, reason: 'model' }) });
    if (right) unit.state = to;
  }),
);
