/*
 * Charges of a return: hire for days more or fewer, waiver on it, cleaning, repair, loss, what was used up and what came back unused.
 * Invariant: each amount is rounded once, on its own line; damage and loss never cost more than the replacement value; every line says how it came about.
 * Not here: the Desk's word on them (return-decisions.ts).
 * Read next: return-facts.ts, tax-totals.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import { type Minor, roundMinor, sumMinor, toMinor } from '#lib/money/money.ts';
import type {
  Cause,
  CleaningFact,
  FoundFact,
  HireChange,
  LossFact,
  RepairFact,
  ReturnFact,
  ReturnLine,
  ReturnQuestion,
  Soil,
  SoldFact,
} from './return-facts.ts';
import { tellAmount, tellCount } from './tell.ts';

export function returnCharges(question: ReturnQuestion): readonly ReturnLine[] {
  const lines = question.facts.flatMap((fact) => linesOf(fact, question));
  const hire = sumMinor(
    lines.filter(({ kind }) => kind === 'more hire' || kind === 'less hire').map(({ net_minor }) => net_minor),
  );
  return [...lines, ...waiverOnHire({ hire, question })];
}

function linesOf(fact: ReturnFact, question: ReturnQuestion): readonly ReturnLine[] {
  switch (fact.kind) {
    case 'hire':
      return hireLine(fact, question);
    case 'cleaning':
      return cleaningLine(fact, question);
    case 'repair':
      return [repairLine(fact, question)];
    case 'loss':
      return [lossLine(fact, question)];
    case 'sold':
      return soldLine(fact, question);
    case 'found':
      return foundLines(fact, question);
  }
}

function hireLine(fact: HireChange, { terms }: ReturnQuestion): readonly ReturnLine[] {
  const change = toMinor(fact.charged_minor - fact.quoted_minor);
  if (change === 0) return [];
  const quoted = tellAmount({ minor: fact.quoted_minor, currency: terms.currency });
  const charged = tellAmount({ minor: fact.charged_minor, currency: terms.currency });
  return [
    {
      ...named(fact),
      ...once(change),
      kind: change > 0 ? 'more hire' : 'less hire',
      tax: terms.taxOf.hire,
      sentence: `${fact.sentence} The hire comes to ${charged}; ${quoted} of it stands in the quote.`,
      open: null,
    },
  ];
}

interface HireSum {
  readonly hire: Minor;
  readonly question: ReturnQuestion;
}

/** The waiver follows the hire it was taken on, up and down. */
function waiverOnHire({ hire, question: { terms, waiver } }: HireSum): readonly ReturnLine[] {
  const amount = waiver === 'taken' ? roundMinor((hire * terms.waiver.percent) / 100) : 0;
  if (amount === 0) return [];
  const basis = tellAmount({ minor: Math.abs(hire), currency: terms.currency });
  return [
    {
      about: 'waiver',
      number: '',
      name: 'Damage waiver',
      serials: [],
      ...once(toMinor(amount)),
      kind: 'waiver',
      tax: terms.taxOf.waiver,
      sentence: `${terms.waiver.percent} % of the ${basis} of hire ${hire > 0 ? 'more' : 'less'}.`,
      open: null,
    },
  ];
}

const SOIL_WORDS: Readonly<Record<Soil, string>> = {
  dirty: 'It came back dirty',
  water: 'It came back wet or silted',
  sewage: 'It came back from sewage',
  product: 'It came back with product on it',
  unknown: 'It came back with something on it that nobody could name',
};

function cleaningLine(fact: CleaningFact, { terms, rates }: ReturnQuestion): readonly ReturnLine[] {
  const price = rates.cleaning_minor[fact.soil] ?? null;
  if (price === 0) return [];
  const amount = price ?? toMinor(0);
  return [
    {
      ...named(fact),
      ...once(amount),
      kind: 'cleaning',
      tax: terms.taxOf.labour,
      sentence:
        price === null
          ? `${SOIL_WORDS[fact.soil]}; the house has no price for cleaning it, so one is to be typed.`
          : `${SOIL_WORDS[fact.soil]}: cleaned at the house's price of ${tellAmount({ minor: amount, currency: terms.currency })}.`,
      open: price === null ? 'price' : null,
    },
  ];
}

function repairLine(fact: RepairFact, question: ReturnQuestion): ReturnLine {
  const { terms, rates } = question;
  invariant(fact.hours >= 0 && fact.hours <= 1000, `Hours of a repair are between 0 and 1000, not ${fact.hours}.`);
  const rate = rates.workshop_minor_per_hour;
  const cost = toMinor(roundMinor((hundredths(fact.hours) * (rate ?? 0)) / 100) + fact.parts_minor);
  const most = toMinor(Math.min(cost, fact.replacement_minor));
  const told = [
    `${fact.words}: ${fact.hours} h in the workshop at ${rate === null ? 'a price to be typed' : `${tellAmount({ minor: rate, currency: terms.currency })} an hour`}`,
    ...(fact.parts_minor === 0
      ? []
      : [`parts for ${tellAmount({ minor: fact.parts_minor, currency: terms.currency })}`]),
  ].join(' and ');
  const capped =
    cost > most
      ? ` No more than its replacement value of ${tellAmount({ minor: most, currency: terms.currency })}.`
      : '';
  const cover = coverOf({ cause: fact.cause, question });
  const isPriceless = cost === 0;
  return {
    ...named(fact),
    ...once(cover.isCovered ? toMinor(0) : most),
    kind: 'repair',
    tax: terms.taxOf.labour,
    sentence: `${told}.${capped} ${cover.sentence}`,
    open: isPriceless && !cover.isCovered ? 'price' : cover.open,
  };
}

/** The whole of a piece that did not come back, or nothing where the waiver covers it. */
function lossLine(fact: LossFact, question: ReturnQuestion): ReturnLine {
  const { terms } = question;
  invariant(Number.isInteger(fact.count) && fact.count > 0, `A loss is a whole number of pieces, not ${fact.count}.`);
  const cover = coverOf({ cause: fact.cause, question });
  const unit = cover.isCovered ? toMinor(0) : fact.replacement_minor;
  const each = tellAmount({ minor: fact.replacement_minor, currency: terms.currency });
  const pieces = fact.count === 1 ? 'It did not come back' : `${fact.count} did not come back`;
  return {
    ...named(fact),
    quantity: fact.count,
    unit_minor: unit,
    net_minor: toMinor(unit * fact.count),
    kind: 'loss',
    tax: terms.taxOf.sale,
    sentence: `${pieces}: replacement value ${each}${fact.count === 1 ? '' : ' each'}. ${cover.sentence}`,
    open: cover.open,
  };
}

interface Cover {
  readonly isCovered: boolean;
  readonly sentence: string;
  readonly open: 'cause' | null;
}

function coverOf({ cause, question }: { readonly cause: Cause; readonly question: ReturnQuestion }): Cover {
  if (question.waiver === 'declined') return { isCovered: false, sentence: 'No damage waiver was taken.', open: null };
  switch (cause.kind) {
    case 'covered':
      return { isCovered: true, sentence: 'The damage waiver covers it.', open: null };
    case 'left out':
      return { isCovered: false, sentence: `The damage waiver leaves out ${cause.words}.`, open: null };
    case 'not known':
      return {
        isCovered: false,
        sentence: 'How it happened is not known yet, and decides whether the damage waiver covers it.',
        open: 'cause',
      };
  }
}

function soldLine(fact: SoldFact, { terms }: ReturnQuestion): readonly ReturnLine[] {
  const more = fact.used - fact.quoted;
  invariant(Number.isInteger(more), 'Pieces that are sold are counted in whole numbers.');
  if (more === 0 || fact.price_minor === 0) return [];
  const price = tellAmount({ minor: fact.price_minor, currency: terms.currency });
  const sold = `${fact.quoted} ${fact.quoted === 1 ? 'stands' : 'stand'} in the quote and ${tellCount({ count: fact.used, one: 'was used', many: 'were used' })}`;
  const line = { ...named(fact), tax: terms.taxOf.sale, open: null } as const;
  if (more > 0) {
    return [
      {
        ...line,
        kind: 'consumed',
        quantity: more,
        unit_minor: fact.price_minor,
        net_minor: toMinor(more * fact.price_minor),
        sentence: `${sold}: ${more} more at ${price} each.`,
      },
    ];
  }
  const credit = roundMinor((fact.price_minor * terms.unusedReturnCreditPercent) / 100);
  if (credit === 0) return [];
  return [
    {
      ...line,
      kind: 'unused',
      quantity: more,
      unit_minor: credit,
      net_minor: toMinor(more * credit),
      sentence: `${sold}: ${-more} came back unused and ${more === -1 ? 'is' : 'are'} credited at ${terms.unusedReturnCreditPercent} % of ${price} each.`,
    },
  ];
}

/**
 * What was charged for the loss is given back, less the hire until it was found; never so much less that anything were to be paid.
 * No waiver is taken on that hire: what was not with the hirer was not under it.
 */
function foundLines(fact: FoundFact, { terms }: ReturnQuestion): readonly ReturnLine[] {
  const { charged_minor: charged, note } = fact;
  invariant(charged >= 0 && fact.hire_minor >= 0, `What was charged for ${fact.about} is not below nought.`);
  if (charged === 0) return [];
  const line = { ...named(fact), open: null } as const;
  const told = tellAmount({ minor: charged, currency: terms.currency });
  const back: ReturnLine = {
    ...line,
    ...once(toMinor(-charged)),
    kind: 'found',
    tax: terms.taxOf.sale,
    sentence: `It was charged as lost on return note ${note} and has been found: the ${told} charged there are given back.`,
  };
  const hire = toMinor(Math.min(fact.hire_minor, charged));
  if (hire === 0) return [back];
  const most = hire < fact.hire_minor ? ` No more is taken than is given back, ${told}.` : '';
  return [
    back,
    { ...line, ...once(hire), kind: 'until found', tax: terms.taxOf.hire, sentence: `${fact.sentence}${most}` },
  ];
}

function named({ about, number, name, serials }: ReturnFact) {
  return { about, number, name, serials };
}

/** One of it; what is given back is minus one at a price above nought. */
function once(net: Minor) {
  return { quantity: net < 0 ? -1 : 1, unit_minor: toMinor(Math.abs(net)), net_minor: net };
}

/** Hours are told to the hundredth, so that no binary fraction decides a half. */
function hundredths(hours: number): number {
  const whole = Math.round(hours * 100);
  invariant(Math.abs(hours * 100 - whole) < 1e-6, `Hours have at most two decimals, not ${hours}.`);
  return whole;
}
