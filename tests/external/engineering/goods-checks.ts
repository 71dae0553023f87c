import { packEnergy } from '#lib/engineering/energy.ts';
import {
  ADR_POINT_LIMIT,
  adrPoints,
  lithiumGoods,
  petrolGoods,
  petrolMachineGoods,
} from '#lib/engineering/transport.ts';
import { dangerousGoods } from '#lib/packing/dangerous-goods.ts';
import type { Piece } from '#lib/packing/piece.ts';
import { transportPoints } from '#lib/packing/transport-points.ts';
import { kilograms, litres, metres, volts, wattHours } from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { branch, each, list, number, numbers, text } from './given.ts';

/* Dangerous goods: lithium packs, petrol, the thousand-point sum. */
const alone = (energy: number) => lithiumGoods({ energy: wattHours(energy), packing: 'alone', mode: 'road' });

function pack(energy: number): Piece {
  return {
    number: 'S-999',
    name: 'Pack',
    serial: null,
    kind: 'pack',
    mass: kilograms(2),
    size: { length: metres(0.2), width: metres(0.1), height: metres(0.1) },
    lithium: { energy: wattHours(energy), packs: 1 },
  };
}

/** How a case of packs alone travels, by energy of a pack and gross mass. */
const routeOf = (energy: number, gross: number) =>
  dangerousGoods({ pieces: [pack(energy)], gross: kilograms(gross), transport: 'road' })[0]?.route;

const whole = (to: number) => Array.from({ length: to }, (_, index) => index + 1);

const route: Check = {
  find: ({ inputs }) => {
    const packing = branch(inputs, 'alone') === true ? 'alone' : 'with equipment';
    const goods = lithiumGoods({ energy: wattHours(number(inputs, 'Wh')), packing, mode: 'road' });
    const found = {
      'small batteries': `SP188 possible (${goods.unNumber})`,
      'fully regulated': `fully regulated ${goods.unNumber} class ${goods.hazardClass}`,
    };
    return {
      route: goods.route === 'small batteries' || goods.route === 'fully regulated' ? found[goods.route] : goods.route,
    };
  },
};

interface Load {
  readonly category: 1 | 2 | 3 | 4;
  readonly quantity: number;
}

function loadsOf(inputs: Value): readonly Load[] {
  return list(inputs, 'items').map((item) => {
    const [, category, quantity] = list(item);
    return { category: categoryOf(number(category ?? null)), quantity: number(quantity ?? null) };
  });
}

function categoryOf(value: number): Load['category'] {
  if (value === 1 || value === 2 || value === 3 || value === 4) return value;
  throw new Error(`There is no transport category ${value}.`);
}

/** Both sums of the house, the one for accessories and the one for a consignment, must say the same. */
function points(loads: readonly Load[]): number {
  const summed = adrPoints(loads.map(({ category, quantity }) => ({ category: `${category}` as const, quantity })));
  return summed === transportPoints(loads).points ? summed : Number.NaN;
}

const sum: Check = {
  find: ({ inputs }) => {
    const loads = loadsOf(inputs);
    const { within } = transportPoints(loads);
    return { points: points(loads), within: within && points(loads) <= ADR_POINT_LIMIT };
  },
};

function part(pattern: RegExp, sentence: string): string {
  return pattern.exec(sentence)?.[1] ?? `not in “${sentence}”`;
}

const AIRLINE = 'masses by air are the carrier’s to ask; ours says that the carrier is asked first';

export const GOODS_CHECKS: Checks = {
  'DG-WH': {
    find: ({ inputs }) => ({
      Wh: list(inputs, 'cases').map((one) => {
        const [voltage = Number.NaN, capacity_ah = Number.NaN] = numbers(one);
        return packEnergy({ voltage: volts(voltage), capacity_ah });
      }),
    }),
  },
  'DG-UN': {
    find: () => {
      const inOrWith = (['with equipment', 'in equipment'] as const).map(
        (packing) => lithiumGoods({ energy: wattHours(324), packing, mode: 'road' }).unNumber,
      );
      const goods = alone(324);
      return {
        alone: goods.unNumber,
        in_or_with: [...new Set(inOrWith)].join(' or '),
        class: goods.hazardClass,
        label: part(/label (\w+)/, goods.sentence),
      };
    },
  },
  'DG-188': {
    besides: {
      cell_Wh: 'cells are not declared apart: every pack of the house is a battery',
      drop_m: 'a test of the packaging, which is its maker’s',
    },
    find: () => ({
      battery_Wh: Math.max(
        ...whole(300).filter((energy) => alone(energy).route === 'small batteries' && routeOf(energy, 5) === 'eased'),
      ),
      gross_kg: Math.max(...whole(100).filter((gross) => routeOf(50, gross) === 'eased')),
    }),
  },
  'DG-188-C1': route,
  'DG-188-C2': route,
  'DG-188-C4': route,
  'DG-965': {
    besides: { IA_kg: AIRLINE, IB_kg: AIRLINE },
    find: () => {
      const { sentence } = lithiumGoods({ energy: wattHours(90), packing: 'alone', mode: 'air' });
      return { SoC_max_pct: Number(part(/(\d+) %/, sentence)), CAO: sentence.includes('cargo aircraft only') };
    },
  },
  'DG-ADR-333': {
    find: ({ inputs }) => ({
      points: points([{ category: 2, quantity: number(inputs, 'kg') }]),
      limit: ADR_POINT_LIMIT,
    }),
  },
  'DG-1136': {
    find: ({ shape }) => ({
      factors: each(branch(shape, 'factors'), (category) =>
        points([{ category: categoryOf(Number(category)), quantity: 1 }]),
      ),
      limit: ADR_POINT_LIMIT,
    }),
  },
  'DG-1136-C1': sum,
  'DG-1136-C3': sum,
  'DG-1136-C4': sum,
  'DG-1136-C5': sum,
  'DG-1136-C6': sum,
  'DG-1203': {
    besides: { cat: 'the transport category is a fact that the sum is given' },
    find: () => {
      const goods = petrolGoods(litres(10));
      const category = 2;
      return {
        class: goods.hazardClass,
        PG: part(/^UN 1203 PETROL, 3, (I+),/, goods.sentence),
        max_L: Math.max(...whole(1000).filter((quantity) => transportPoints([{ category, quantity }]).within)),
      };
    },
  },
  'DG-363': {
    find: ({ inputs }) => {
      const tank = text(inputs, 'state').startsWith('drained') ? 'drained' : 'fuel in tank';
      return { subject_to_ADR: petrolMachineGoods(tank).route !== 'not subject when drained' };
    },
  },
  'DG-3528': {
    besides: { 3529: 'no gas engine is hired out', 3530: 'no such engine is hired out' },
    find: () => {
      const goods = petrolMachineGoods('fuel in tank');
      return { [goods.unNumber.replace('UN ', '')]: goods.hazardClass };
    },
  },
};
