import { expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { balance, type Ledger, step } from '#tests/support/stock/counted-ledger.ts';
import { smallHouse, startOf } from '#tests/support/stock/stock-house.ts';

const SEQUENCES = 60;
const STEPS = 30;

it('no counted piece comes out of nothing or is gone: what is owned is free, promised, out, back, on its way or lost, after every step', async () => {
  const start = await smallHouse();
  const random = seededRandom(4217);
  const below = (most: number): number => Math.floor(random() * most);
  const done = new Map<string, number>();
  let checked = 0;
  for (let sequence = 0; sequence < SEQUENCES; sequence += 1) {
    const { real } = startOf(start);
    const ledger: Ledger = { owned: 10, lost: 0, onTheWay: new Map(), hires: [], done };
    const stage = { context: real.context(), models: real.models, counted: real.counted, below, ledger };
    for (let at = 0; at < STEPS; at += 1) {
      step(stage);
      balance(stage);
      checked += 1;
    }
    stage.context.database.raw.close();
  }
  const told = [...done].map(([deed, many]) => `${deed} ${many}`).join(', ');
  console.info(`counted pieces: ${SEQUENCES} sequences, balance struck ${checked} times; ${told}`);
  expect(checked).toBe(SEQUENCES * STEPS);
  for (const deed of ['book', 'sendOut', 'comeBack', 'close', 'cancel', 'buy', 'transfer', 'arrive'])
    expect(done.get(deed) ?? 0, `${deed} was hardly ever done`).toBeGreaterThan(10);
}, 240_000);
