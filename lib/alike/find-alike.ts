/*
 * Finds who is there already while a name, an address of mail or a telephone number is typed, and says why it may be the same.
 * Invariant: it only tells; nothing is refused because something is alike. The strongest reason comes first, then the order given.
 * Not here: where the known ones come from (lib/services).
 * Read next: name-key.ts, edit-distance.ts.
 */
import { editDistance } from './edit-distance.ts';
import { nameKey } from './name-key.ts';

export interface Known {
  readonly id: number;
  readonly name: string;
  readonly emails: readonly string[];
  readonly telephones: readonly string[];
}

export interface Typed {
  readonly name?: string | undefined;
  readonly email?: string | undefined;
  readonly telephone?: string | undefined;
}

export const ALIKE_REASONS = {
  'same-name': 'the same name',
  'same-email': 'the same address of mail',
  'same-telephone': 'the same telephone number',
  'nearly-same-name': 'nearly the same name',
  'same-mail-domain': 'the same mail domain',
  'begins-the-same': 'the name begins the same',
} as const;
export type AlikeReason = keyof typeof ALIKE_REASONS;

const STRENGTH = Object.keys(ALIKE_REASONS);

export interface Alike {
  readonly id: number;
  readonly reason: AlikeReason;
}

/** Letters of a name that say enough to be compared. */
const LETTERS_ENOUGH = 4;
/** One letter in so many may differ, and never more than three. House practice, no source. */
const LETTERS_A_SLIP = 6;
const SLIPS_MOST = 3;
/** Digits from the end that tell two numbers apart whatever dialling code stands before them. */
const DIGITS_COMPARED = 8;
const DIGITS_ENOUGH = 6;
/** A domain of more of them belongs to a mail service, not to one of them. */
const SHARERS_OF_A_DOMAIN = 2;

export function findAlike({
  typed,
  among,
  most = 5,
}: {
  readonly typed: Typed;
  readonly among: readonly Known[];
  readonly most?: number;
}): readonly Alike[] {
  const question = {
    key: nameKey(typed.name ?? ''),
    email: (typed.email ?? '').trim().toLowerCase(),
    domain: domainThatTells(typed.email ?? '', among),
    telephone: digitsOf(typed.telephone ?? ''),
  };
  return among
    .flatMap((known): readonly Alike[] => {
      const reason = reasonOf(known, question);
      return reason === undefined ? [] : [{ id: known.id, reason }];
    })
    .sort((a, b) => STRENGTH.indexOf(a.reason) - STRENGTH.indexOf(b.reason))
    .slice(0, most);
}

interface Question {
  readonly key: string;
  readonly email: string;
  readonly domain: string;
  readonly telephone: string;
}

function reasonOf(known: Known, { key, email, domain, telephone }: Question): AlikeReason | undefined {
  const own = nameKey(known.name);
  if (key !== '' && (own === key || sameWords(own, key))) return 'same-name';
  const emails = known.emails.map((text) => text.trim().toLowerCase());
  if (email.includes('@') && emails.includes(email)) return 'same-email';
  if (telephone !== '' && known.telephones.some((text) => digitsOf(text) === telephone)) return 'same-telephone';
  if (key.length >= LETTERS_ENOUGH && isSlip(own, key)) return 'nearly-same-name';
  if (domain !== '' && emails.some((text) => domainOf(text) === domain)) return 'same-mail-domain';
  if (key.length >= LETTERS_ENOUGH && own.startsWith(key)) return 'begins-the-same';
  return undefined;
}

/** “Orde and Tamsin” is “Tamsin and Orde”. */
function sameWords(...[a, b]: readonly [string, string]): boolean {
  const sorted = (key: string): string => key.split(' ').sort().join(' ');
  return a.length === b.length && sorted(a) === sorted(b);
}

function isSlip(...[a, b]: readonly [string, string]): boolean {
  const limit = Math.min(SLIPS_MOST, Math.ceil(Math.min(a.length, b.length) / LETTERS_A_SLIP));
  const close = (x: string, y: string): boolean => editDistance({ a: x, b: y, limit }) <= limit;
  return close(a, b) || close(a.replaceAll(' ', ''), b.replaceAll(' ', ''));
}

function domainOf(email: string): string {
  return /@([^@\s]+\.[^@\s.]+)\s*$/.exec(email.toLowerCase())?.[1] ?? '';
}

/** Empty where so many share the domain that it says nothing. */
function domainThatTells(...[email, among]: readonly [string, readonly Known[]]): string {
  const domain = domainOf(email);
  if (domain === '') return '';
  const sharers = among.filter(({ emails }) => emails.some((text) => domainOf(text) === domain)).length;
  return sharers > SHARERS_OF_A_DOMAIN ? '' : domain;
}

function digitsOf(telephone: string): string {
  const digits = telephone.replace(/\D/g, '');
  return digits.length < DIGITS_ENOUGH ? '' : digits.slice(-DIGITS_COMPARED);
}
