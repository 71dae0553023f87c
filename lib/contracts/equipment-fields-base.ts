/*
 * Fields that every model has: number, name, mass, case, rates, replacement value, marking, packs.
 * Invariant: paths are those of the schema in equipment.ts; a test holds the two against each other.
 * Not here: facts of a role (equipment-fields-*.ts).
 * Read next: equipment-fields.ts.
 */
import { type EquipmentField, fieldGroup } from './equipment-field.ts';

const model = fieldGroup('Model');
const box = fieldGroup('Mass and case');
const money = fieldGroup('Rates to begin with, and value');
const packs = fieldGroup('Lithium packs', { optional: true });

export function baseFields(currencyUnit: string): readonly EquipmentField[] {
  return [
    ...nameFields(),
    model.flag(['counted', 'counted', 'Pieces without serial numbers, such as pins and pegs, counted on the shelf.']),
    model.flag([
      'made_to_order',
      'made to order',
      'Made by the workshop when asked for: never in stock, offered only where nothing else serves.',
    ]),
    model.text(
      [
        'marking',
        'hazardous-area marking',
        'The whole marking as on the plate, for example “II 2 G Ex h IIB T4 Gb”. Empty means unmarked, and unmarked goes into no zone.',
      ],
      { optional: true },
    ),
    box.number(['mass_kg', 'mass', 'Mass of one piece as it is lifted at the valve, without its case.'], {
      unit: 'kg',
      range: [0.01, 500],
    }),
    box.number(['case.length_mm', 'case length', 'Outer length of its case, or of the piece where it has none.'], {
      unit: 'mm',
      range: [10, 6000],
    }),
    box.number(['case.width_mm', 'case width', 'Outer width of its case.'], { unit: 'mm', range: [10, 3000] }),
    box.number(['case.height_mm', 'case height', 'Outer height of its case.'], { unit: 'mm', range: [5, 3000] }),
    money.number(
      [
        'rates.day_minor',
        'day rate',
        'Net, for one day. Later rates are put on a card with the day from which they hold.',
      ],
      { unit: currencyUnit, range: [0, 1e7] },
    ),
    money.number(
      ['rates.week_minor', 'week rate', 'Net, for one week. The price takes the cheapest mix of the three.'],
      { unit: currencyUnit, range: [0, 1e7] },
    ),
    money.number(['rates.four_weeks_minor', 'four-week rate', 'Net, for four weeks.'], {
      unit: currencyUnit,
      range: [0, 1e8],
    }),
    money.count(['rates.minimum_days', 'minimum days', 'A shorter hire is charged as this many days.'], {
      range: [1, 60],
    }),
    money.number(
      [
        'replacement_minor',
        'replacement value',
        'What a new one costs: charged for a lost piece, and compared with hire.',
      ],
      { unit: currencyUnit, range: [0, 1e9] },
    ),
    packs.number(
      [
        'lithium.energy_wh',
        'energy of a pack',
        'Watt-hours of one lithium pack, as on its label: decides how it may be sent.',
      ],
      { unit: 'Wh', range: [0.1, 5000] },
    ),
    packs.count(['lithium.packs', 'packs', 'How many packs travel with it.'], { range: [1, 20] }),
  ];
}

function nameFields(): readonly EquipmentField[] {
  return [
    model.text([
      'number',
      'number',
      'House number, one or two capital letters, a hyphen and three or four digits: D-214. It never changes.',
    ]),
    model.text(['name', 'name', 'What people call it, in plain words.']),
    model.text(
      ['name_de', 'name in German', 'What it is called on German papers and screens; empty keeps the English name.'],
      { optional: true },
    ),
  ];
}
