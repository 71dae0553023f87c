/*
 * Parts of a plate's marking that hold for all plates: letters of protection, levels of categories, where one marking ends.
 * Invariant: a plate whose category, level, group and atmosphere disagree contradicts itself.
 * Not here: reading a marking (plate-marking.ts).
 * Read next: plate-marking.ts.
 */
export const LEVEL_OF_CATEGORY: Readonly<Record<string, string>> = { '1': 'a', '2': 'b', '3': 'c', M1: 'a', M2: 'b' };

/** Types of protection that a plate may name: IEC 60079-0 and ISO 80079-36 with the older letters; from memory. */
export const PROTECTIONS: ReadonlySet<string> = new Set(
  'b c d da db dc e eb ec h i ia ib ic k m ma mb mc n nA nC nR o ob oc p px pxb py pyb pz pzc q qb s sa sb sc t ta tb tc'.split(
    ' ',
  ),
);

/** Best level that a type of protection reaches: IEC 60079-0, table of types and levels; from memory. */
const BEST_LEVEL: Readonly<Record<string, 'a' | 'b' | 'c'>> = {
  d: 'b',
  e: 'b',
  n: 'c',
  nA: 'c',
  nC: 'c',
  nR: 'c',
  o: 'b',
  q: 'b',
  db: 'b',
  dc: 'c',
  eb: 'b',
  ec: 'c',
  ib: 'b',
  ic: 'c',
  mb: 'b',
  mc: 'c',
  ob: 'b',
  oc: 'c',
  pxb: 'b',
  pyb: 'b',
  pzc: 'c',
  qb: 'b',
  sb: 'b',
  sc: 'c',
  tb: 'b',
  tc: 'c',
};

interface Parts {
  readonly group: string;
  readonly category: string;
  readonly atmosphere: 'G' | 'D' | null;
  readonly protections: readonly string[];
  readonly subgroup: string;
  readonly level: string | null;
}

/**
 * The markings of a plate, parted.
 *
 * Formula: parted at `;`, line breaks, `/` before a marking, and before each further category or Ex
 *
 * @param text - Plate, tidied. [–]
 * @returns One text for each marking. [–]
 * @source IEC 60079-0 clause 29: gas and dust are marked apart.
 * @assumes A marking starts with its category or with Ex.
 * @example splitPlate('Ex db IIC T6 Gb Ex tb IIIC T85°C Db') // => ['Ex db IIC T6 Gb', 'Ex tb IIIC T85°C Db']
 */
export function splitPlate(text: string): readonly string[] {
  return text
    .split(/\s*[;\n|]\s*|\s*\/\s*(?=(?:I|II) ?(?:M?[123(])|\[?EE?x|\[?Ex)/)
    .flatMap((part) => part.split(/\s+(?=(?:I|II) ?(?:M[12]|[123(])[^.]*?\bE?Ex )/))
    .flatMap(splitAtEx)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** A second `Ex` after a level starts another marking; the first one after a category does not. */
function splitAtEx(text: string): readonly string[] {
  return text.split(/(?<=\b(?:[GD][abc]|M[ab])(?: X)?)\s+(?=\[?E?Ex )/);
}

/**
 * Why a marking contradicts itself.
 *
 * Formula: category and level agree, group and subgroup agree, gas or dust agree, no protection is below its level
 *
 * @param parts - Parts of the marking. [–]
 * @returns What disagrees, or null. [–]
 * @source 2014/34/EU Annex I with IEC 60079-0; from memory.
 * @assumes Letters that are not listed (h, ia, m, p, s, t without a level) reach the level that the category asks.
 * @example contradictionOf({ group: 'II', category: '1', atmosphere: 'G', protections: ['db'], subgroup: 'IIC', level: 'Ga' }) // => 'protection db reaches level b at best, level Ga is marked'
 */
export function contradictionOf(parts: Parts): string | null {
  const { group, category, atmosphere, subgroup, level, protections } = parts;
  const rank = LEVEL_OF_CATEGORY[category];
  const letter = group === 'I' ? 'M' : atmosphere;
  const levelFits =
    level === null || rank === undefined || (letter === null ? level.endsWith(rank) : level === `${letter}${rank}`);
  const dust = subgroup.startsWith('III');
  const groupFits = (group === 'I') === (subgroup === 'I') && (atmosphere === null || dust === (atmosphere === 'D'));
  if (!levelFits || !groupFits) {
    return `category ${category}${atmosphere ?? ''}, level ${level ?? 'none'}, group ${subgroup}`;
  }
  const marked = level?.slice(-1) ?? rank ?? 'c';
  const weak = protections.find((code) => (BEST_LEVEL[code] ?? 'a') > marked);
  return weak === undefined
    ? null
    : `protection ${weak} reaches level ${BEST_LEVEL[weak]} at best, level ${level ?? marked} is marked`;
}
