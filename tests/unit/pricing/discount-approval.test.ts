import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toMinor } from '#lib/money/money.ts';
import {
  type Approval,
  askAbove,
  type DiscountAsk,
  discountStanding,
  mayDecide,
  percentGiven,
} from '#lib/pricing/discount-approval.ts';
import { type DiscountChoices, NO_DISCOUNTS } from '#lib/pricing/discounts.ts';
import type { ManualLine } from '#lib/pricing/manual-line.ts';
import { pricePlan } from '#lib/pricing/price-plan.ts';
import { demoHouse, demoModels } from '#seeds/load.ts';

const HOUSE = demoHouse();
const LIMIT = HOUSE.terms.discountLimitPercent;
const DRIVE = demoModels().filter(({ number }) => number === 'D-112');

const line = (change: Partial<ManualLine> = {}): ManualLine => ({
  id: 'a',
  kind: 'training',
  text: 'Instruction',
  quantity: 1,
  unit: 'lump sum',
  unit_minor: toMinor(48_000),
  per: 'once',
  tax: 'S',
  list_minor: null,
  rehired: null,
  ...change,
});

interface Given {
  readonly count?: number;
  readonly manual?: readonly ManualLine[];
  readonly discounts?: DiscountChoices;
}

function priced({ count = 2, manual = [], discounts = NO_DISCOUNTS }: Given) {
  return pricePlan({
    items: DRIVE.map((model) => ({ model, count })),
    days: 5,
    terms: HOUSE.pricing,
    waiver: 'declined',
    deliveryBand: null,
    labour: null,
    manual,
    discounts,
    deposit: null,
  });
}

const whole = (percent: number): DiscountChoices => ({ groups: [], whole: { percent, reason: 'frame agreement' } });
const onHire = (percent: number): DiscountChoices => ({
  groups: [{ group: 'hire', percent, reason: 'frame agreement' }],
  whole: null,
});
const ask = (given: Given): DiscountAsk | null => askAbove(priced(given), LIMIT);

/** What was asked for, as an approval in a state. */
function approval(given: Given, state: Approval['state'] = 'approved'): Approval {
  const asked = ask(given);
  if (asked === null) throw new Error('Nothing has to be asked for.');
  return { id: 7, state, ask: asked };
}

describe('the limit of discounts', () => {
  it('is 8 % in the demo house: at it nothing is asked for, above it the group is named with what is given', () => {
    expect(LIMIT).toBe(8);
    expect(ask({ discounts: onHire(8) })).toBeNull();
    expect(ask({ discounts: onHire(8.5) })).toEqual({
      currency: 'EUR',
      net_minor: 21_100 - 1794,
      groups: [{ group: 'hire', listed_minor: 21_100, given_minor: 1794 }],
    });
  });

  it('counts a discount on the group and one on the whole together', () => {
    const both: DiscountChoices = { ...onHire(5), whole: { percent: 4, reason: 'spring' } };
    const asked = ask({ discounts: both });
    expect(asked?.groups.map(({ group }) => group)).toEqual(['hire']);
    expect(percentGiven(asked?.groups[0] ?? { group: 'hire', listed_minor: 0, given_minor: 0 })).toBe(8.8);
  });

  it('counts a price that was typed below that of the price list', () => {
    const cheap = line({ list_minor: toMinor(60_000) });
    expect(ask({ manual: [cheap] })?.groups).toEqual([{ group: 'people', listed_minor: 60_000, given_minor: 12_000 }]);
    expect(ask({ manual: [line({ list_minor: toMinor(40_000) })] })).toBeNull();
  });

  it('does not hold the rounding of a line against a discount at the limit', () => {
    expect(ask({ manual: [line({ unit_minor: toMinor(7) })], discounts: whole(8) })).toBeNull();
  });
});

describe('an approval', () => {
  const given: Given = { manual: [line()], discounts: whole(12) };
  const standing = (now: Given, approvals: readonly Approval[]) => discountStanding({ ask: ask(now), approvals });

  it('is not needed within the limit', () => {
    expect(standing({ discounts: whole(3) }, [])).toEqual({ kind: 'within' });
  });

  it('is to be asked for first, and then waited for', () => {
    expect(standing(given, [])).toMatchObject({ kind: 'to ask', because: 'never asked' });
    expect(standing(given, [approval(given, 'asked')])).toMatchObject({ kind: 'asked', approvalId: 7 });
  });

  it('holds for exactly what was priced, and for what gives less', () => {
    const approvals = [approval(given)];
    expect(standing(given, approvals)).toMatchObject({ kind: 'approved', approvalId: 7 });
    expect(standing({ ...given, discounts: whole(11) }, approvals).kind).toBe('approved');
  });

  it.each<readonly [string, Given]>([
    ['a higher percentage', { ...given, discounts: whole(12.5) }],
    ['the same percentage of more equipment', { ...given, count: 3 }],
    ['the same percentage, with a line taken out', { ...given, manual: [] }],
    [
      'a discount on another group',
      { ...given, discounts: { ...whole(12), groups: [{ group: 'people', percent: 1, reason: 'x' }] } },
    ],
    [
      'a line made cheaper than the list',
      { ...given, manual: [line({ unit_minor: toMinor(47_000), list_minor: toMinor(48_000) })] },
    ],
  ])('is needed anew for %s', (_, now) => {
    expect(standing(now, [approval(given)])).toMatchObject({ kind: 'to ask', because: 'lower since' });
  });

  it('that was refused or withdrawn says so, and can be asked for again', () => {
    for (const state of ['refused', 'withdrawn'] as const)
      expect(standing(given, [approval(given, state)])).toMatchObject({ kind: 'to ask', because: state });
    expect(standing(given, [{ ...approval(given, 'asked'), id: 8 }, approval(given, 'refused')]).kind).toBe('asked');
  });

  it('is given by somebody else than who asked, once', () => {
    expect(mayDecide({ state: 'asked', askedBy: 'u1', decider: 'u2' }).ok).toBe(true);
    expect(mayDecide({ state: 'asked', askedBy: 'u1', decider: 'u1' })).toMatchObject({
      reason: { code: 'approval-own' },
    });
    expect(mayDecide({ state: 'approved', askedBy: 'u1', decider: 'u2' })).toMatchObject({
      reason: { code: 'approval-decided' },
    });
  });

  it('never covers a price that comes to less, or that gives more of any group, than what it was given for', () => {
    const percents = fc.integer({ min: 900, max: 4000 }).map((hundredths) => hundredths / 100);
    const givens = fc.record({
      count: fc.integer({ min: 1, max: 4 }),
      percent: percents,
      lines: fc.integer({ min: 0, max: 2 }),
    });
    const make = ({ count, percent, lines }: { count: number; percent: number; lines: number }): Given => ({
      count,
      discounts: whole(percent),
      manual: Array.from({ length: lines }, (_, index) => line({ id: String(index) })),
    });
    let covered = 0;
    fc.assert(
      fc.property(givens, givens, (before, now) => {
        const approved = approval(make(before));
        const asked = ask(make(now));
        if (asked === null || standing(make(now), [approved]).kind !== 'approved') return;
        covered += 1;
        expect(asked.net_minor).toBeGreaterThanOrEqual(approved.ask.net_minor);
        for (const group of asked.groups) {
          const was = approved.ask.groups.find((one) => one.group === group.group);
          expect(group.given_minor).toBeLessThanOrEqual(was?.given_minor ?? 0);
        }
      }),
      { seed: 20_260_301, numRuns: 2000 },
    );
    console.info(`approvals: ${covered} of 2000 pairs were covered`);
    expect(covered).toBeGreaterThan(50);
  });
});
