/*
 * A header's text → the column it means, by name, by alias, cut short as shapefiles do, by words in it, or misspelt.
 * Invariant: the first way that fits wins, in that order; each answer says why and how sure it is.
 * Not here: what the cells below say (judge-column.ts).
 * Read next: propose-mapping.ts.
 */
import { type Dimension, findUnit, UNITS } from '#lib/units/unit-table.ts';
import { COLUMNS, type Column, columnSpec } from './columns.ts';
import { editDistance, headerKey, plainText, quoted } from './plain-text.ts';

/** A column, text to be kept with its header as a label, or nothing of use. */
export type Field = Column | 'remark' | 'ignore';
export type Confidence = 'sure' | 'likely' | 'guess';

export interface HeaderMatch {
  readonly field: Field;
  readonly confidence: Confidence;
  readonly why: string;
  readonly unit?: string;
}

/** Headers whose text is worth reading but is no column of its own; pipe sizes stand in where the valve's is missing. */
const REMARK_HEADERS = (
  'status|lifecycle status|operational status|history|function|function of valve|functional|pipe diameter|pipe dia|pipe size|' +
  'pipe network|pipe material|main size|main diameter|main material|material|problem|problems|defect|defects|fault|detail|details|' +
  'purpose|use|abandoned|in service|rohrdurchmesser|diamètre conduite|diámetro tubería'
).split('|');
const IGNORED_HEADERS = (
  'serial no|serial number|serial|date|datetime|time|survey date|created|created by|creationdate|creator|created date|edited|editor|' +
  'editdate|modified|last edited|globalid|shape|geom|geometry|wkt|manufacturer|make|supplier|model|inspector|surveyor|checked by|' +
  'cleaning|contractor|cost|price|z|elevation|altitude|level|accuracy|rotation angle|symbol|layer|remaining'
).split('|');

const INDEX: ReadonlyMap<string, Field> = new Map<string, Field>([
  ...IGNORED_HEADERS.map((name) => [headerKey(name), 'ignore'] as const),
  ...REMARK_HEADERS.map((name) => [headerKey(name), 'remark'] as const),
  ...COLUMNS.flatMap((spec) =>
    [...spec.aliases, spec.label, spec.name].map((name) => [headerKey(name), spec.name] as const),
  ),
]);
const KEYS: readonly string[] = [...INDEX.keys()].sort((a, b) => b.length - a.length);
/** Aliases of two or more words or one long one, for headers that hold them among other words. */
const PHRASES: readonly (readonly [phrase: string, field: Field])[] = [
  ...REMARK_HEADERS.map((name) => [plainText(name), 'remark'] as const),
  ...COLUMNS.flatMap((spec) => spec.aliases.map((alias) => [plainText(alias), spec.name] as const)),
]
  .filter(([phrase]) => phrase.length >= 5 || phrase.includes(' '))
  .toSorted((a, b) => b[0].length - a[0].length);

const PHRASES_BY_WORD = groupBy(PHRASES, ([phrase]) => phrase.split(' ')[0] ?? '');

/** Shapefiles cut names at ten characters; shorter starts say too little. */
const SHORTEST_CUT = 7;
const KEYS_BY_START = groupBy(KEYS, (key) => key.slice(0, SHORTEST_CUT));

const ANY_DIMENSION: readonly Dimension[] = [...new Set(UNITS.map((unit) => unit.dimension))];

function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): ReadonlyMap<string, readonly Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return groups;
}

export function matchHeader(header: string): HeaderMatch | null {
  return matchKnownHeader(header) ?? misspelt(splitUnit(header)?.base ?? header);
}

/** Without guesses at misspelt names: for finding the row of headers among rows of values. */
export function matchKnownHeader(header: string): HeaderMatch | null {
  const whole = headerKey(header);
  if (whole === '') return null;
  const exact = INDEX.get(whole);
  if (exact !== undefined)
    return {
      field: exact,
      confidence: 'sure',
      why: `The header ${quoted(header)} is a name of this column.`,
      ...implied(header),
    };
  const split = splitUnit(header);
  const based = split === null ? undefined : INDEX.get(headerKey(split.base));
  if (split !== null && based !== undefined && fitsUnit(based, split.unit)) {
    return {
      field: based,
      confidence: 'sure',
      why: `The header ${quoted(header)} is a name of this column with its unit.`,
      unit: split.unit,
    };
  }
  return cutShort(header) ?? cutShort(split?.base ?? header) ?? within(header, split);
}

/** `DN` and `NB` name millimetres, `NPS` inches, and one utility name its unit in full. */
function implied(header: string): { readonly unit?: string } {
  const key = headerKey(header);
  if (/^(?:dn|dnmm|nb)$/.test(key)) return { unit: 'mm' };
  if (key === 'nps') return { unit: 'in' };
  if (key === 'accessminutes' || key === 'accessmin') return { unit: 'min' };
  if (key === 'maxrpm') return { unit: 'rpm' };
  return key === 'fintorque' || key === 'finaltorqueftpounds' ? { unit: 'ft lb' } : {};
}

/** `Size (mm)`, `Pressure [bar]`, `Torque in Nm`, `dn_mm`, `Depth, m`. */
export function splitUnit(header: string): { readonly base: string; readonly unit: string } | null {
  const text = header.trim().replace(/\s+/g, ' ');
  const bracketed = /^(.*?)\s*[([{]\s*([^()[\]{}]{1,16}(?:\([ag]\))?)\s*[)\]}]\s*$/.exec(text);
  const spoken = /^(.*\S)(?:\s+in\s+|\s*[,:/]\s*|[\s_]+)([^\s,:_]{1,10}(?: [^\s,:_]{1,8})?)$/i.exec(text);
  const found = bracketed ?? spoken;
  if (found?.[1] === undefined || found[2] === undefined) return null;
  return isAnyUnit(found[2]) ? { base: found[1], unit: found[2] } : null;
}

function isAnyUnit(text: string): boolean {
  return ANY_DIMENSION.some((dimension) => findUnit({ text, dimension }) !== undefined);
}

function fitsUnit(field: Field, unit: string): boolean {
  if (field === 'ignore' || field === 'remark') return true;
  return dimensionsOf(field).some((dimension) => findUnit({ text: unit, dimension }) !== undefined);
}

export function dimensionsOf(column: Column): readonly Dimension[] {
  const { reading } = columnSpec(column);
  switch (reading.kind) {
    case 'quantity':
      return [reading.dimension];
    case 'size':
    case 'nut':
      return ['length'];
    case 'rating':
      return ['pressure'];
    case 'years':
      return ['time'];
    default:
      return [];
  }
}

function cutShort(header: string): HeaderMatch | null {
  const key = headerKey(header);
  if (key.length < SHORTEST_CUT) return null;
  const alike = KEYS_BY_START.get(key.slice(0, SHORTEST_CUT)) ?? [];
  const longer = alike.filter((name) => name.length > key.length && name.startsWith(key));
  const fields = new Set(longer.map((name) => INDEX.get(name)));
  const [field] = fields;
  if (fields.size !== 1 || field === undefined) return null;
  return {
    field,
    confidence: 'likely',
    why: `The header ${quoted(header)} looks cut short, as some programs do after ten characters.`,
  };
}

function within(header: string, split: { readonly base: string; readonly unit: string } | null): HeaderMatch | null {
  const plain = ` ${plainText(header)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;
  const words = new Set(plain.trim().split(' '));
  const candidates = [...words].flatMap((word) => PHRASES_BY_WORD.get(word) ?? []);
  const found = candidates
    .filter(([phrase]) => plain.includes(` ${phrase} `))
    .toSorted((a, b) => b[0].length - a[0].length)[0];
  if (found === undefined) return null;
  const unit = split !== null && fitsUnit(found[1], split.unit) && found[1] !== 'remark' ? { unit: split.unit } : {};
  return {
    field: found[1],
    confidence: 'likely',
    why: `The header ${quoted(header)} holds the words ${quoted(found[0])}.`,
    ...unit,
  };
}

function misspelt(header: string): HeaderMatch | null {
  const key = headerKey(header);
  if (key.length < 6) return null;
  const limit = key.length >= 10 ? 2 : 1;
  const found = KEYS.find((name) => name.length >= 6 && editDistance({ a: key, b: name, limit }) <= limit);
  const field = found === undefined ? undefined : INDEX.get(found);
  return field === undefined
    ? null
    : { field, confidence: 'guess', why: `The header ${quoted(header)} looks like ${quoted(found ?? '')} misspelt.` };
}
