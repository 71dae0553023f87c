/*
 * Makes the papers of a worked-out enquiry as view models: quote, packing list, site sheet, calculation sheet.
 * Invariant: the same worked-out enquiry, house and date give the same papers.
 * Not here: drawing them (lib/workers) and keeping them (issue-quote.ts).
 * Read next: ../../documents/papers/paper-inputs.ts.
 */
import type { HouseFacts } from '#lib/contracts/house.ts';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import { calculationPaper } from '#lib/documents/papers/calculation-paper.ts';
import { type PackingInput, packingPaper } from '#lib/documents/papers/packing-paper.ts';
import type { Paper } from '#lib/documents/papers/paper.ts';
import { paperInForms } from '#lib/documents/papers/paper-forms.ts';
import {
  type CaseInput,
  type CustomerInput,
  type KitInput,
  type PaperContext,
  type PriceInput,
  SHORT_OF_TIME_OR_STOCK,
  type UnservedLine,
} from '#lib/documents/papers/paper-inputs.ts';
import { paperInLanguage } from '#lib/documents/papers/paper-language.ts';
import type { QuoteOptionInput } from '#lib/documents/papers/quote-option-input.ts';
import { type QuoteInput, quotePaper } from '#lib/documents/papers/quote-paper.ts';
import { sitePaper } from '#lib/documents/papers/site-paper.ts';
import type { QuoteChanges } from '#lib/documents/words/quote-changes.ts';
import type { WrittenForms } from '#lib/documents/words/written-forms.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { zoneName } from '#lib/engineering/hazardous-marking.ts';
import type { Model } from '#lib/equipment/model.ts';
import { addDays, type IsoDate, rangeOfDays } from '#lib/kernel/date-range.ts';
import type { Exchange } from '#lib/money/exchange.ts';
import type { PackedCase } from '#lib/packing/pack-cases.ts';
import type { PlanOutcome, WorkedOut } from '#lib/planning/worked-out.ts';
import type { PaymentTerms } from '#lib/pricing/payment-terms.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import { crewDaysOf } from '#lib/services/plans/crew-days-of.ts';
import { crewOffset, lackingSentences } from '#lib/services/plans/crew-numbers.ts';
import { packKit } from '#lib/services/plans/pack-kit.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Language } from '#lib/wording/language.ts';
import { paperLines } from './paper-lines.ts';
import { paperNames, tellerOf } from './paper-names.ts';

export const PAPER_KINDS = ['quote', 'packing-list', 'site-sheet', 'calculation'] as const;
export type PaperKind = (typeof PAPER_KINDS)[number];

export interface PapersInput {
  readonly number: string;
  readonly issuedOn: IsoDate;
  /** Units that the papers print; SI where it is absent, as on all that was frozen before there was a choice. */
  readonly system?: UnitSystem;
  /** How the customer writes dates and figures; where it is absent the house's own form. */
  readonly forms?: WrittenForms;
  /** What they are written in; English where it is absent. */
  readonly language?: Language;
  /** Where another currency than the house's own is quoted: at which rate. */
  readonly exchange?: Exchange;
  readonly house: HouseFacts;
  readonly customer: CustomerInput;
  readonly title: string;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly lines: readonly ScheduleLine[];
  readonly worked: WorkedOut;
  readonly outcome: PlanOutcome;
  readonly price: PricedPlan;
  /** Serial numbers held for it, by model; empty before a booking. */
  readonly serials: Readonly<Record<string, readonly string[]>>;
  /** Absent before a booking. */
  readonly bookingNumber?: string;
  /** What the Desk chose for the price; absent in quotes from before there was a choice, as all that follows. */
  readonly choices?: PriceChoices;
  readonly payment?: PaymentTerms;
  /** Which option of several this is. */
  readonly option?: { readonly slot: number; readonly name: string };
  /** Further options of the same quote: what differs from the first. */
  readonly others?: readonly OtherOption[];
  /** Against the revision before. */
  readonly changes?: QuoteChanges;
  readonly made?: MadeWith;
}

export interface OtherOption
  extends Pick<PapersInput, 'site' | 'worked' | 'outcome' | 'price' | 'choices' | 'payment' | 'option'> {}

/** What it was worked out and drawn with. */
export interface MadeWith {
  readonly program: string;
  /** How many rules were asked, and the hash of their words, severities and sources. */
  readonly rules: { readonly count: number; readonly sha256: string };
  /** Discounts above the limit that were approved. */
  readonly approvals: readonly {
    readonly about: string;
    readonly askedBy: string;
    readonly approvedBy: string;
    readonly at: string;
  }[];
}

/** Each option as if it were a quote of its own; one where there is no choice. */
export function optionInputs(input: PapersInput): readonly PapersInput[] {
  const { others = [], ...first } = input;
  if (others.length === 0) return [first];
  return [first, ...others.map((other) => ({ ...first, ...other }))].map((option, index) => ({
    ...option,
    number: `${input.number}, option ${index + 1}`,
  }));
}

/** The option in a slot; the first where none is told apart. */
export function optionOf(input: PapersInput, slot: number): PapersInput | undefined {
  const options = optionInputs(input);
  return options.length === 1 ? options[0] : options.find(({ option }) => option?.slot === slot);
}

export function paperOf(kind: PaperKind, input: PapersInput): Paper {
  const paper = inLanguage(kind, input);
  const { forms } = input;
  return forms === undefined ? paper : paperInForms(paper, { forms, names: paperNames(input) });
}

/** Packing list and calculation sheet stay in the house's own language. */
function inLanguage(kind: PaperKind, input: PapersInput): Paper {
  const { language = 'en' } = input;
  const context = paperContext(input);
  if (language === 'en' || (kind !== 'quote' && kind !== 'site-sheet')) return inHouseForm(kind, { input, context });
  const teller = tellerOf(input);
  const paper = inHouseForm(kind, { input, context: { ...context, tell: teller.tell } });
  return paperInLanguage(paper, { language, teller });
}

function inHouseForm(
  kind: PaperKind,
  { input, context }: { readonly input: PapersInput; readonly context: PaperContext },
): Paper {
  switch (kind) {
    case 'quote':
      return quotePaper(quoteInput(input));
    case 'packing-list':
      return packingPaper(packingInput(input));
    case 'site-sheet':
      return sitePaper({
        context,
        lines: paperLines(input).filter(({ assembly }) => assembly !== null),
        crewDays: crewDaysOf(input),
      });
    case 'calculation':
      return calculationPaper({ context, lines: paperLines(input) });
  }
}

/** The options as the quote tells them, the first first. */
export function quoteOptions(input: PapersInput): readonly QuoteOptionInput[] {
  return optionInputs(input).map(quoteOption);
}

export function quoteInput(input: PapersInput): QuoteInput {
  const [first = quoteOption(input), ...others] = quoteOptions(input);
  return {
    ...first,
    context: paperContext(input),
    others,
    validUntil: validUntil(input),
    ...(input.changes === undefined ? {} : { changes: input.changes }),
    exclusions: EXCLUSIONS,
    terms: input.house.terms.text,
  };
}

function quoteOption(input: PapersInput): QuoteOptionInput {
  return {
    context: paperContext(input),
    ...(input.option === undefined ? {} : { name: input.option.name }),
    lines: paperLines(input),
    unserved: unservedLines(input),
    kits: kitInputs(input),
    price: priceInput(input),
    payment: input.payment?.sentences ?? [],
    planSentence: planSentence(input),
  };
}

/** What the packing list holds, on paper and as data. */
export function packingInput(input: PapersInput): PackingInput {
  return {
    context: paperContext(input),
    bookingNumber: input.bookingNumber ?? input.number,
    depot: input.house.depots[0]?.name ?? input.house.name,
    transport: input.site.transport,
    cases: caseInputs(input),
    lacking: lackingSentences(input),
  };
}

export function validUntil({ issuedOn, house }: Pick<PapersInput, 'issuedOn' | 'house'>): IsoDate {
  return addDays(issuedOn, house.terms.quoteValidDays);
}

const EXCLUSIONS: readonly string[] = [
  'Operating, isolating, draining or repairing valves, unless the scope above says otherwise.',
  'Permits, traffic management, confined-space entry and gas testing.',
  'Damage to valves, spindles, gearboxes or pipework that are worn, corroded or seized.',
  'Fuel, compressed air and mains supply on site.',
];

export function paperContext({
  number,
  issuedOn,
  system = 'si',
  house,
  customer,
  title,
  site,
  models,
}: PapersInput): PaperContext {
  return {
    number,
    issuedOn,
    system,
    house: {
      name: house.name,
      address: house.address,
      phone: house.telephone,
      email: house.email,
      taxNumber: house.registration,
    },
    customer,
    site: {
      name: site.name ?? title,
      window: rangeOfDays(site.startsOn, site.days),
      crews: site.crews,
      personsPerCrew: site.personsPerCrew,
      shiftHours: site.shiftHours,
      operated: site.operated,
      facts: siteFacts(site),
    },
    models,
  };
}

function siteFacts(site: Site): readonly string[] {
  return [
    `Power sources allowed: ${site.sourcesAllowed.join(', ')}`,
    ...areaFacts(site),
    ...(site.enclosed ? ['Enclosed place'] : []),
    ...site.houseRules.map((rule) => rule.sentence),
  ];
}

function areaFacts({ zone, gasGroup, temperatureClass, areaRemark }: Site): readonly string[] {
  const about = [
    ...(gasGroup === undefined ? [] : [`gas group ${gasGroup}`]),
    ...(temperatureClass === undefined ? [] : [`temperature class ${temperatureClass}`]),
  ];
  const named = zone === undefined ? null : (zoneName(zone) ?? 'none');
  return [
    ...(named === null && about.length === 0 ? [] : [[`Hazardous zone: ${named ?? 'not given'}`, ...about].join(', ')]),
    ...(areaRemark === undefined ? [] : [`Hazardous area: ${areaRemark}`]),
  ];
}

/** Why valves that equipment fits are left: stock where more pieces would help, otherwise the hours of the crews. */
function notEnough({ worked, models }: PapersInput) {
  const short = (worked.shortage?.valvesMore ?? 0) > 0 ? (worked.shortage?.short ?? []) : [];
  const pieces = short.map(
    ({ item, wanted, free }) =>
      `${models.find(({ number }) => number === item)?.name ?? item} (${item}): ${wanted} wanted, ${free} free`,
  );
  return {
    id: SHORT_OF_TIME_OR_STOCK,
    severity: 'refusal',
    about: ['crews', 'days', 'stock'],
    sentence:
      pieces.length > 0
        ? `Equipment fits this line, but too few pieces are free on these dates: ${pieces.join('; ')}.`
        : 'Equipment fits this line, but the hours of the crews in these days do not reach for all of its valves.',
    source: 'the plan and its bound',
  } as const;
}

export function unservedLines(input: PapersInput): readonly UnservedLine[] {
  const { lines, worked, outcome } = input;
  const qty = new Map(lines.map((line) => [line.tag, line.qty]));
  const none = worked.unserved.map(({ tag, because, repairs }) => ({
    tag,
    qty: qty.get(tag) ?? 1,
    because,
    repairs: repairs.map(({ cost: _cost, ...told }) => told),
  }));
  const short = outcome.lines
    .filter((line) => line.served < line.asked)
    .map((line) => ({
      tag: line.tag,
      qty: line.asked - line.served,
      because: [notEnough(input)],
      repairs: [{ sentence: 'Allow more days, another crew, or other dates.' }],
    }));
  return [...none, ...short];
}

function kitInputs({ outcome, serials }: PapersInput): readonly KitInput[] {
  return outcome.kits.map((kit) => ({
    crew: kit.crew + crewOffset(outcome),
    items: kit.items.map(({ item, count }) => ({
      number: item,
      count,
      ...(serials[item] ? { serials: serials[item] } : {}),
    })),
    hours: kit.time_s / 3600,
    valves: outcome.work.filter((work) => work.crew === kit.crew).reduce((sum, work) => sum + work.qty, 0),
    mass_kg: kit.mass_kg,
  }));
}

export function planSentence({ outcome, site }: Pick<PapersInput, 'outcome' | 'site'>): string {
  const { fleet } = outcome;
  const proof =
    fleet.proof === 'proven' ? 'proven' : `within ${(fleet.gap * 100).toFixed(2)} % of the bound (${fleet.proof})`;
  const wish = { cost: 'least cost', pieces: 'fewest pieces', time: 'shortest time', surest: 'the surest first visit' }[
    fleet.preference
  ];
  return `${fleet.served} of ${fleet.asked} valves that equipment fits are served by ${site.crews} ${site.crews === 1 ? 'crew' : 'crews'} in ${site.days} ${site.days === 1 ? 'day' : 'days'}; chosen for ${wish}, ${proof}.`;
}

function priceInput({ price, choices }: PapersInput): PriceInput {
  return {
    currency: price.currency,
    days: price.days,
    lines: price.lines.map((line) => ({
      label: line.number === '' ? line.name : `${line.name} (${line.number})`,
      how: line.sentence,
      quantity: line.quantity,
      ...unitOf(line),
      ...(choices?.purchase === 'shown' && line.purchase_after_days !== null
        ? { purchase: `Buying would have been cheaper after ${line.purchase_after_days} days.` }
        : {}),
      amount_minor: line.net_minor,
      taxCategory: line.tax,
    })),
    taxes: price.taxes.map((tax) => ({
      category: tax.code,
      label: tax.name,
      rate_percent: tax.percent,
      base_minor: tax.taxable_minor,
      tax_minor: tax.tax_minor,
    })),
    net_minor: price.net_minor,
    tax_minor: price.tax_minor,
    total_minor: price.gross_minor,
    ...(price.deposit_minor > 0 ? { deposit_minor: price.deposit_minor } : {}),
    notes: price.notes,
  };
}

function unitOf({ kind, unit }: PapersInput['price']['lines'][number]): { readonly unit?: string } {
  if (unit !== undefined) return { unit };
  return kind === 'labour' ? { unit: 'hour' } : {};
}

function caseInputs(input: PapersInput): readonly CaseInput[] {
  const left = new Map(Object.entries(input.serials).map(([number, serials]) => [number, [...serials]]));
  let label = 0;
  return input.outcome.kits.flatMap((kit) => {
    const { cases } = packKit({
      items: kit.items,
      models: input.models,
      liftLimit: input.house.liftLimit,
      transport: input.site.transport,
      nextSerial: (number) => left.get(number)?.shift() ?? null,
    });
    return cases.map((packed) => {
      label += 1;
      return {
        number: packed.name === 'loose' ? `${label} (loose)` : String(label),
        crew: kit.crew + crewOffset(input.outcome),
        contents: contentsOf(packed.pieces),
        mass_kg: packed.mass,
        lift: packed.lift.mark,
        energy_wh: packed.wattHours,
        dangerousGoods: packed.dangerousGoods.map(({ sentence }) => sentence),
      };
    });
  });
}

function contentsOf(pieces: PackedCase['pieces']): CaseInput['contents'] {
  const numbers = [...new Set(pieces.map(({ number }) => number))];
  return numbers.map((number) => {
    const same = pieces.filter((piece) => piece.number === number);
    return {
      number,
      name: same[0]?.name ?? number,
      count: same.length,
      serials: same.flatMap(({ serial }) => (serial === null ? [] : [serial])),
      mass_kg: same.reduce((sum, piece) => sum + piece.mass, 0),
    };
  });
}
