/** A plausible plan of an invented house for an invented water works, with long names, warnings and lines that cannot be served. */
import type { CalculationInput } from '#lib/documents/papers/calculation-paper.ts';
import type { PackingInput } from '#lib/documents/papers/packing-paper.ts';
import type { PaperContext, PaperLine, UnservedLine } from '#lib/documents/papers/paper-inputs.ts';
import type { QuoteInput } from '#lib/documents/papers/quote-paper.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { exactly } from '#lib/units/known-value.ts';
import { PICTURE_CASES } from './picture-cases.ts';
import { sampleAssembly, sampleDuty, sampleLine } from './sample-duty.ts';
import { SAMPLE_MODELS } from './sample-models.ts';

export const SAMPLE_CONTEXT: PaperContext = {
  number: 'Q-2031-0142',
  revision: 2,
  issuedOn: '2031-03-04',
  system: 'si',
  house: {
    name: 'Torhaven Valve Drive Hire',
    address: ['Slipway Yard 7', 'Torhaven TH4 2QD'],
    phone: '+00 5550 220 140',
    email: 'desk@torhaven.example',
    taxNumber: 'Tax no. XX 482 1190 07',
  },
  customer: {
    name: 'Zakład Wodny Łódź-Północ, Oddział Utrzymania Sieci Magistralnych',
    contact: 'Małgorzata Świątek',
    address: ['ul. Źródlana 18', '90-001 Łódź'],
    reference: 'PO 77-4410/B',
  },
  site: {
    name: 'Pumping station Διώνη and trunk main to Верхний Бор',
    window: { starts_on: '2031-03-17', ends_before: '2031-03-22' },
    crews: 2,
    personsPerCrew: 2,
    shiftHours: 9,
    operated: false,
    facts: ['No petrol indoors', 'Mains 230 V, CEE 7/7', 'Zone 2 at the degassing tank, IIA T3', 'Temperature −4…6 °C'],
  },
  models: SAMPLE_MODELS,
};

const warning = (sentence: string): Finding => ({
  id: 'sample-warning',
  severity: 'warning',
  about: [],
  sentence,
  source: 'house rule',
});
const note = (sentence: string): Finding => ({
  id: 'sample-note',
  severity: 'note',
  about: [],
  sentence,
  source: 'common practice, no source',
});

/** One class from every picture case, some with several valves. */
export const SAMPLE_LINES: readonly PaperLine[] = PICTURE_CASES.flatMap((one, index) => {
  const { subject } = one;
  const findings =
    index % 3 === 0
      ? [
          warning('The wheel diameter is assumed as 400…500 mm; both W-117 and W-105 go with the kit.'),
          note(
            'Thermal binding is possible when the line has cooled since it was shut: equalise and warm it, do not force it.',
          ),
        ]
      : [];
  const duty = { ...subject.duty, findings, steps: subject.duty.steps };
  const assembly = { ...subject.assembly, findings, steps: subject.duty.steps };
  const count = [6, 1, 3, 1, 14, 2, 1, 1, 40, 1, 1, 2, 1][index] ?? 1;
  return Array.from(
    { length: count },
    (_, n): PaperLine => ({
      classId: `class-${index}`,
      line: {
        ...subject.line,
        tag: n === 0 ? subject.line.tag : `${subject.line.tag}/${n + 1}`,
        qty: n === 0 && index === 3 ? 3 : 1,
        place: { ...subject.line.place, placeOrder: (index * 7 + n * 3) % 41 },
      },
      duty: { ...duty, tag: subject.line.tag },
      assembly,
      crew: index % 2 === 0 ? 1 : 2,
    }),
  );
});

export const SAMPLE_UNSERVED: readonly UnservedLine[] = [
  {
    tag: 'PV-201',
    qty: 1,
    because: [
      {
        id: 'empty-window',
        severity: 'refusal',
        about: [],
        sentence: 'Starting takes at least 640 N·m, but the stem yields at 520 N·m (Tr36x6, torsion at the root).',
        source: 'Shigley',
      },
    ],
    repairs: [
      { sentence: 'Free the gland and pressure-equalise first, then measure the starting torque.' },
      { sentence: 'Works with a purpose-made restraint and a stem support.', cost: 'workshop enquiry' },
    ],
  },
  {
    tag: 'SV-204',
    qty: 2,
    because: [
      {
        id: 'bent-stem',
        severity: 'refusal',
        about: [],
        sentence: 'The list says the stem is bent; a bent stem is never driven under power.',
        source: 'house rule',
      },
    ],
    repairs: [],
  },
];

export const SAMPLE_QUOTE: QuoteInput = {
  context: SAMPLE_CONTEXT,
  lines: SAMPLE_LINES,
  unserved: SAMPLE_UNSERVED,
  kits: [1, 2].map((crew) => ({
    crew,
    hours: crew === 1 ? 36.4 : 31.25,
    valves: crew === 1 ? 66 : 10,
    mass_kg: crew === 1 ? 118.6 : 74.2,
    items: SAMPLE_MODELS.slice(crew === 1 ? 0 : 10, crew === 1 ? 18 : 24).map((model, index) => ({
      number: model.number,
      count: (index % 3) + 1,
    })),
  })),
  price: {
    currency: 'EUR',
    days: 5,
    lines: [
      ...SAMPLE_MODELS.slice(0, 14).map((model, index) => ({
        label: `${model.number} ${model.name}`,
        how: `5 days: one week at 168.00 is cheaper than 5 single days at 42.00 each; ${index + 1} of them.`,
        quantity: index + 1,
        amount_minor: 16_800 * (index + 1),
        taxCategory: 'S',
      })),
      { label: 'Damage waiver', how: '8 % of the hire.', quantity: 1, amount_minor: 141_120, taxCategory: 'S' },
      {
        label: 'Delivery and collection, band 3 (60 to 120 km)',
        how: 'Two trips at 145.00.',
        quantity: 2,
        amount_minor: 29_000,
        taxCategory: 'S',
      },
    ],
    taxes: [
      {
        category: 'S',
        label: 'Value added tax, standard rate',
        rate_percent: 23,
        base_minor: 1_934_120,
        tax_minor: 444_848,
      },
    ],
    net_minor: 1_934_120,
    tax_minor: 444_848,
    total_minor: 2_378_968,
    deposit_minor: 500_000,
    notes: ['Loss and theft.', 'Use past the limiter ceiling.', 'Contamination that needs more than a wash.'],
  },
  planSentence: 'The plan follows least cost; no cheaper set of kits serves as many valves (proven to within 0.4 %).',
  validUntil: '2031-04-03',
  exclusions: [
    'Operators and supervision: this is a dry hire.',
    'Opening, pumping out and traffic guarding of chambers.',
    'Replacement of stems, nuts and packings.',
    'Compressed air and mains power at the site.',
  ],
  terms: [
    'Hire is charged from the day of delivery to your numbered off-hire notice, at least one day.',
    'Equipment is returned clean, with all pieces on the packing list; missing pieces are charged at replacement value.',
    'Payment within 30 days of invoice.',
    'The list is yours: we planned from it and did not see the valves.',
  ],
};

export const SAMPLE_PACKING: PackingInput = {
  context: SAMPLE_CONTEXT,
  bookingNumber: 'B-2031-0077',
  depot: 'Torhaven, Slipway Yard',
  transport: 'road',
  loadSentence:
    '12 kg of lithium packs with their equipment in transport category 2 make 36 of 1000 points (ADR 1.1.3.6): no orange plates.',
  cases: Array.from({ length: 7 }, (_, index) => ({
    number: `KC-${index + 1}`,
    crew: index < 4 ? 1 : 2,
    mass_kg: 18.4 + index * 2.3,
    lift: index < 3 ? 'one person' : index < 6 ? 'two persons' : 'lifting gear',
    energy_wh: index % 3 === 0 ? 432 : 0,
    dangerousGoods:
      index % 3 === 0
        ? ['UN 3481 lithium ion batteries packed with equipment, class 9, 2 packs of 216 Wh, full regulation']
        : [],
    contents: SAMPLE_MODELS.slice(index * 3, index * 3 + 5).map((model, place) => ({
      number: model.number,
      name: model.name,
      count: (place % 2) + 1,
      serials:
        place % 3 === 2
          ? []
          : Array.from(
              { length: (place % 2) + 1 },
              (_, n) => `${model.number.replace('-', '')}-${1040 + index * 7 + n}`,
            ),
      mass_kg: model.mass * ((place % 2) + 1),
    })),
  })),
};

export const SAMPLE_CALCULATION: CalculationInput = { context: SAMPLE_CONTEXT, lines: SAMPLE_LINES };

/** A long plan: as many lines as a large real list, in as many classes as it would make. */
export function longPlan(size: { readonly lines: number; readonly classes: number }): readonly PaperLine[] {
  const kinds = Array.from({ length: size.classes }, (_, index) => {
    const duty = sampleDuty({
      tag: `LV-${index}`,
      run: [20 + index, 30 + index, 50 + index],
      start: [40 + index, 60 + index, 90 + index],
    });
    return { duty, assembly: { ...sampleAssembly(duty, {}), steps: duty.steps } };
  });
  return Array.from({ length: size.lines }, (_, index): PaperLine => {
    const kind = kinds[index % size.classes] ?? kinds[0];
    const tag = `V-${String(index + 1).padStart(4, '0')}`;
    const duty = kind?.duty ?? sampleDuty({ tag });
    return {
      classId: `c${index % size.classes}`,
      line: sampleLine(tag, {
        size: exactly('m', 0.08 + (index % size.classes) * 0.001, { basis: 'stated', source: 'Customer list.' }),
        place: { location: `Chamber ${index % 97}` },
      }),
      duty: { ...duty, tag },
      assembly: kind?.assembly ?? null,
      crew: (index % 3) + 1,
    };
  });
}
