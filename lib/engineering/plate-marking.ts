/*
 * Reading of the marking on a plate: ATEX category, Ex code, group, temperature, level, ambient, X.
 * Invariant: a plate that cannot be read, contradicts itself or is meant for another place is refused, and the part that stopped the reading is named.
 * Not here: whether it may stand in a zone (hazardous-marking.ts).
 * Read next: hazardous-marking.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { contradictionOf, LEVEL_OF_CATEGORY, PROTECTIONS, splitPlate } from './plate-grammar.ts';

export interface Marking {
  readonly group: 'I' | 'II';
  /** As marked; where only an Ex code is there, the category that its level stands for. */
  readonly category: 'M1' | 'M2' | '1' | '2' | '3';
  readonly atmosphere: 'G' | 'D' | null;
  /** Types of protection, e.g. `db`, `h`. */
  readonly protections: readonly string[];
  /** In square brackets: what it supplies elsewhere; says nothing of where the part itself may stand. */
  readonly associated: readonly string[];
  /** `IIA`, `IIB`, `IIB+H2`, `IIC`, `IIIA` …, or `II` for all gas groups. */
  readonly subgroup: string;
  /** `T4`, or `T135°C` for dust; of a range the hotter end. */
  readonly temperature: string | null;
  readonly level: string | null;
  /** Special conditions apply. */
  readonly special: boolean;
  /** Marked by rules that are no longer current: `EEx`, no level, or letters c, b, k instead of h. */
  readonly old: boolean;
  /** Air that it is made for in °C, where the plate says so. */
  readonly ambient: { readonly low: number; readonly high: number } | null;
}

/**
 * Reads a plate that may carry several markings, as for gas and for dust.
 *
 * Formula: markings parted by `/`, `;`, a line break, or a new category or `Ex`
 *
 * @param text - All that the plate says of explosive atmospheres. [–]
 * @returns Its markings, or why one of them cannot be read or contradicts itself. [–]
 * @source 2014/34/EU Annex II 1.0.5; IEC 60079-0 clause 29; ISO 80079-36 clause 11.
 * @assumes Gas and dust are marked apart, as IEC 60079-0 asks.
 * @example parsePlate('II 2 G Ex db IIB T4 Gb / II 2 D Ex tb IIIC T135°C Db').ok // => true
 */
export function parsePlate(text: string): Result<readonly Marking[]> {
  const markings: Marking[] = [];
  for (const part of splitPlate(tidyPlate(text))) {
    const read = parseMarking(part);
    if (!read.ok) return read;
    markings.push(read.value);
  }
  return markings.length === 0 ? unreadable(text, text) : ok(markings);
}

/**
 * Reads one marking of a plate.
 *
 * Formula: group, category, atmosphere, Ex, protections, subgroup, temperature, level, ambient, X; or the same from Ex on
 *
 * @param text - One marking as on the plate, e.g. `II 2 G Ex db IIB T4 Gb`. [–]
 * @returns Its parts, or why it cannot be read or contradicts itself. [–]
 * @source 2014/34/EU Annex II 1.0.5; IEC 60079-0 clause 29; ISO 80079-36 clause 11.
 * @assumes One marking a text; parsePlate reads several.
 * @example parseMarking('II 2 G Ex db IIB T4 Gc').ok // => false
 */
export function parseMarking(text: string): Result<Marking> {
  const reader = openReader(tidyPlate(text));
  if (/\b(?:class|cl\.?) ?(?:I{1,3}|1|2|3)\b|\bdiv|\bAEx\b/i.test(text)) {
    return failed({
      code: 'marking-north-american',
      sentence: `The marking “${text}” is North American (class, division or AEx); it says nothing that can be held against a zone here and counts as unmarked. Ask for the IEC or ATEX marking.`,
    });
  }
  const category = readCategory(reader);
  const prefix = reader.take(/^\[?\s*(EEx|Ex)(?=[ [])\s*/);
  if (prefix === null) return unreadable(text, reader.rest());
  if (prefix[0].startsWith('[')) return associatedOnly(text);
  const protections = readProtections(reader);
  if (protections.strange !== null) return strangeProtection(text, protections.strange);
  if (protections.own.length === 0) {
    return protections.associated.length > 0 ? associatedOnly(text) : unreadable(text, reader.rest());
  }
  const subgroup = reader.take(/^(III[ABC]|II(?:B ?\+ ?H[2₂]|[ABC])?|I)(?= |$)\s*/)?.[1];
  if (subgroup === undefined) return unreadable(text, reader.rest());
  const temperature = readTemperature(reader);
  const level = readLevel(reader);
  const ambient = readAmbient(reader);
  const suffix = reader.take(/^(X|U)(?= |$)\s*/)?.[1];
  if (reader.rest() !== '') return unreadable(text, reader.rest());
  if (suffix === 'U') return component(text);
  const whole = category ?? categoryOfLevel(level);
  if (whole === null) return withoutCategory(text);
  const marking: Marking = {
    ...whole,
    protections: protections.own,
    associated: protections.associated,
    subgroup: subgroup.replaceAll(' ', '').replace('₂', '2'),
    temperature,
    level,
    special: suffix === 'X',
    old: prefix[1] === 'EEx' || level === null || protections.own.some((code) => ['c', 'b', 'k'].includes(code)),
    ambient,
  };
  const contradiction = contradictionOf(marking);
  return contradiction === null ? ok(marking) : contradictory(text, contradiction);
}

interface Reader {
  readonly take: (pattern: RegExp) => RegExpExecArray | null;
  readonly rest: () => string;
}

function openReader(text: string): Reader {
  let left = text;
  return {
    take: (pattern) => {
      const found = pattern.exec(left);
      if (found !== null) left = left.slice(found[0].length);
      return found;
    },
    rest: () => left,
  };
}

function tidyPlate(text: string): string {
  return text
    .replace(/[⟨⟩⬡]/g, ' ')
    .replace(/\bCE(?: ?\d{4})?\b|\bIP ?\d[\dX]\b/g, ' ')
    .replace(/[–—−]/g, '-')
    .replace(/º/g, '°')
    .replace(/[ \t]+/g, ' ')
    .trim();
}

type Category = Pick<Marking, 'group' | 'category' | 'atmosphere'>;

/** `II 2 G`, `II 2G`, `I M2`, `II 2(1) G` (the bracket is for what it supplies), `II 1/2 G` (the weaker side counts). */
function readCategory(reader: Reader): Category | null {
  const found = reader.take(/^(I|II) ?(M1|M2|[123](?:\/[123])?)(?: ?\((?:M?[123])\))? ?(G|D)?(?: ?\/)?(?= |E)\s*/);
  if (found === null) return null;
  const weaker = (found[2] ?? '3').split('/').toSorted().at(-1);
  const category = weaker === 'M1' || weaker === 'M2' || weaker === '1' || weaker === '2' ? weaker : '3';
  return {
    group: found[1] === 'I' ? 'I' : 'II',
    category,
    atmosphere: found[3] === 'G' || found[3] === 'D' ? found[3] : null,
  };
}

interface Protections {
  readonly own: readonly string[];
  readonly associated: readonly string[];
  readonly strange: string | null;
}

function readProtections(reader: Reader): Protections {
  const own: string[] = [];
  const associated: string[] = [];
  for (;;) {
    const bracket = reader.take(/^\[([^\]]*)\]\s*/)?.[1];
    if (bracket !== undefined) {
      associated.push(bracket.trim());
      continue;
    }
    const code = reader.take(/^(n[ACR]|[a-z]{1,3})(?=[ [\-/]|$)[ \-/]*/)?.[1];
    if (code === undefined) return { own, associated, strange: null };
    if (!PROTECTIONS.has(code)) return { own, associated, strange: code };
    own.push(code);
  }
}

/** `T4`, `T135°C`, `T6…T4` or `T4/T6`: of a range the hotter end, which is the lower class number or the higher degrees. */
function readTemperature(reader: Reader): string | null {
  const found = reader.take(
    /^(T ?\d{2,3} ?°? ?C|T[1-6])(?: ?(?:\.{2,3}|…|to|\/|-) ?(T ?\d{2,3} ?°? ?C|T[1-6]))?(?= |$)\s*/,
  );
  if (found === null) return null;
  const ends = [found[1], found[2]].filter((end) => end !== undefined).map((end) => end.replaceAll(' ', ''));
  const heat = (end: string): number =>
    end.endsWith('C') ? Number(/\d+/.exec(end)?.[0]) : 1000 - Number(end.slice(1));
  return ends.toSorted((a, b) => heat(b) - heat(a))[0] ?? null;
}

/** `Gb`; of `Ga/Gb` the weaker, which is the later letter. */
function readLevel(reader: Reader): string | null {
  const found = reader.take(/^(M[ab]|[GD][abc])(?:\/([GD][abc]))?(?= |$)\s*/);
  return found === null
    ? null
    : ([found[1], found[2]]
        .filter((level) => level !== undefined)
        .toSorted()
        .at(-1) ?? null);
}

/** `-20 °C ≤ Ta ≤ +60 °C`, `Ta -20 to +60 °C`, `Tamb = -20 °C … 60 °C`. */
function readAmbient(reader: Reader): Marking['ambient'] {
  const found =
    reader.take(/^([+-]? ?\d{1,3}) ?°? ?C? ?(?:≤|<=|<) ?T(?:a|amb) ?(?:≤|<=|<) ?([+-]? ?\d{1,3}) ?°? ?C(?= |$)\s*/i) ??
    reader.take(
      /^T(?:a|amb)\.? ?[=:]? ?([+-]? ?\d{1,3}) ?°? ?C? ?(?:\.{2,3}|…|to|\/) ?([+-]? ?\d{1,3}) ?°? ?C(?= |$)\s*/i,
    );
  if (found === null) return null;
  const end = (text: string | undefined): number => Number((text ?? '').replaceAll(' ', ''));
  return { low: end(found[1]), high: end(found[2]) };
}

/** An Ex code alone says by its level what a category would: Ga 1 G, Db 2 D, Mb M2 (2014/34/EU with IEC 60079-0). */
function categoryOfLevel(level: string | null): Category | null {
  if (level === null) return null;
  const [letter, rank] = [level.slice(0, 1), level.slice(1)];
  const mine = letter === 'M';
  const category = (['M1', 'M2', '1', '2', '3'] as const).find(
    (name) => name.startsWith('M') === mine && LEVEL_OF_CATEGORY[name] === rank,
  );
  if (category === undefined) return null;
  return { group: mine ? 'I' : 'II', category, atmosphere: letter === 'G' || letter === 'D' ? letter : null };
}

function unreadable(text: string, rest: string): Result<never> {
  const part = rest === '' ? 'its end, where more is expected' : `“${rest.slice(0, 40)}”`;
  return failed({
    code: 'marking-unreadable',
    sentence: `The marking “${text}” cannot be read at ${part}; it counts as unmarked.`,
  });
}

function strangeProtection(text: string, code: string): Result<never> {
  return failed({
    code: 'marking-unreadable',
    sentence: `The marking “${text}” names no type of protection that is known (${code}); it counts as unmarked.`,
  });
}

function associatedOnly(text: string): Result<never> {
  return failed({
    code: 'marking-associated',
    sentence: `The marking “${text}” is for equipment that stands outside the zone and supplies something in it (square brackets); in the zone it counts as unmarked.`,
  });
}

function component(text: string): Result<never> {
  return failed({
    code: 'marking-component',
    sentence: `The marking “${text}” ends in U: a component that is not complete by itself; it counts as unmarked.`,
  });
}

function withoutCategory(text: string): Result<never> {
  return failed({
    code: 'marking-unreadable',
    sentence: `The marking “${text}” has neither a category (such as II 2 G) nor a level (such as Gb); it counts as unmarked.`,
  });
}

function contradictory(text: string, why: string): Result<never> {
  return failed({
    code: 'marking-contradictory',
    sentence: `The marking “${text}” contradicts itself (${why}); it counts as unmarked.`,
  });
}
