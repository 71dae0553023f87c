/*
 * A second reading of plates and zones, word by word, so that a fault of the first one is noticed.
 * Invariant: shares no code with lib/engineering's reading; a word that it does not know keeps the part out of every zone.
 * Not here: reasons; those are told by the rules.
 * Read next: check-place.ts, ../engineering/hazardous-marking.ts.
 */

interface Spot {
  readonly zone: string;
  readonly gasGroup: string | null;
  readonly temperatureClass: string | null;
}

interface Plate {
  letter: string;
  /** 0 is the level that stays safe with two faults, 2 the one for normal use. */
  level: number;
  group: string;
  degrees: number;
  isKnown: boolean;
  codes: number;
}

const SAFE_WORDS =
  'none no nil nein non kein keine aucun aucune ningun ninguna nenhum nenhuma nessun nessuna na safe ordinary generalpurpose unclassified notclassified noclassified nonclassified nonclasse nonhazardous nothazardous nohazard nichtexplosionsgefahrdet horszone nozone zonasegura'.split(
    ' ',
  );
const PLACE_WORDS = ['', 'area', 'zone', 'location', 'place', 'bereich'];
const SAFE: ReadonlySet<string> = new Set(SAFE_WORDS.flatMap((word) => PLACE_WORDS.map((place) => word + place)));
/** Highest surface in °C by the number of its class; IEC 60079-0. */
const SURFACES = [450, 300, 200, 135, 100, 85] as const;
const SUBCLASSES: Readonly<Record<string, number>> = {
  '2A': 280,
  '2B': 260,
  '2C': 230,
  '2D': 215,
  '3A': 180,
  '3B': 165,
  '3C': 160,
  '4A': 120,
};
const GROUPS = ['IIA', 'IIB', 'IIB+H2', 'IIC'];
const CODES: ReadonlySet<string> = new Set(
  'b c d da db dc e eb ec h i ia ib ic k m ma mb mc n nA nC nR o ob oc p px pxb py pyb pz pzc q qb s sa sb sc t ta tb tc'.split(
    ' ',
  ),
);

export function isOutsideZones(text: string): boolean {
  const word = squeeze(text);
  return word === '' || SAFE.has(word);
}

/** Whether a part with this plate may stand at the place. */
export function mayStand(plate: string | null, spot: Spot): boolean {
  if (isOutsideZones(spot.zone)) return true;
  const zone = /^(?:atex|ex|iec|gas|dust|hazardous|area)*(?:zone|zona|z)?(20|21|22|0|1|2)(?:gas|dust|ex|atex)?$/.exec(
    squeeze(spot.zone),
  )?.[1];
  const mine = /mine|mining|firedamp/.test(squeeze(spot.zone)) || /^(?:group|m)?(?:i|m1|m2)$/.test(squeeze(spot.zone));
  if (plate === null || (zone === undefined && !mine)) return false;
  const read = readPlates(plate);
  if (read.length === 0 || read.some(({ isKnown, codes }) => !isKnown || codes === 0)) return false;
  if (mine) return read.some(({ letter, level }) => letter === 'M' && level === 0);
  const letter = Number(zone) >= 20 ? 'D' : 'G';
  const heat = spot.temperatureClass === null ? 85 : degreesOf(spot.temperatureClass);
  return read.some(
    (each) =>
      each.letter === letter &&
      each.level <= Number(zone) % 10 &&
      rank(each.group, letter) >= demanded(spot.gasGroup, letter) &&
      each.degrees <= (Number.isNaN(heat) ? 85 : heat),
  );
}

function squeeze(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
}

function demanded(text: string | null, letter: string): number {
  const tight = (text ?? '')
    .toUpperCase()
    .replaceAll('₂', '2')
    .replace(/(?:GAS|DUST|EXPLOSION) |GROUP /g, '')
    .replace(/PLUS|AND/, '+')
    .replace('HYDROGEN', 'H2')
    .replace(/[ -]/g, '');
  const found = rank(letter === 'D' && /^[ABC]$/.test(tight) ? `III${tight}` : tight, letter);
  return found === 0 || tight === 'II' ? rank(letter === 'D' ? 'IIIC' : 'IIC', letter) : found;
}

function rank(group: string, letter: string): number {
  if (letter === 'D') return /^III[ABC]$/.test(group) ? group.charCodeAt(3) - 64 : 0;
  return group === 'II' ? GROUPS.length : GROUPS.indexOf(group) + 1;
}

/** Degrees of `T4`, `T3C`, `T135°C`, `200 °C`. */
function degreesOf(text: string): number {
  const tight = text.toUpperCase().replace(/CLASS|TEMPERATURE|[ °º]/g, '');
  const degrees = /^T?(\d{2,3})C$/.exec(tight)?.[1];
  if (degrees !== undefined) return Number(degrees);
  return (
    SUBCLASSES[tight.slice(1)] ?? (/^T[1-6]$/.test(tight) ? (SURFACES[Number(tight[1]) - 1] ?? Number.NaN) : Number.NaN)
  );
}

/** Every `Ex` starts a plate; the words before it that follow the last level are its category. */
function readPlates(text: string): readonly Plate[] {
  const words = withoutAir(text)
    .replace(/\[[^\]]*\]|\([^)]*\)|[⟨⟩⬡]|\bCE(?: ?\d{4})?\b|\bIP ?\d[\dX]\b/g, ' ')
    .replace(/[–−]/g, '-')
    .replace(/T (\d)/g, 'T$1')
    .replace(/(\d) ?°? ?C\b/g, '$1C')
    .replace(/ ?\+ ?H[2₂]/g, '+H2')
    .replace(/\b([123])([GD])\b/g, '$1 $2')
    .replace(/([GD][abc])\/(?=[GD][abc])/g, '$1 ')
    .replace(/(\d)\/(\d)(?= [GD])/g, '$1 $2')
    .replace(/(T\d+C?) ?(?:…|\.{2,3}|to|\/|-) ?(?=T\d)/g, '$1 ')
    .replace(/[;|\n]|\/(?= ?II? )|\/(?= ?E?Ex )/g, ' NEXT ')
    .split(/[\s/]+/)
    .filter((word) => word !== '');
  const plates: Plate[] = [];
  let before: string[] = [];
  let level = '';
  for (const word of words) {
    const plate = plates.at(-1);
    if (word === 'NEXT') level = word;
    else if (word === 'Ex' || word === 'EEx') {
      if (plate !== undefined && level === '' && before.length === 0) plate.isKnown = false;
      plates.push(opened(before));
      before = [];
      level = '';
    } else if (plate === undefined || ((level !== '' || plate.group !== '') && /^(?:II?|M[12]|[123GD])$/.test(word)))
      before.push(word);
    else level = take(plate, word) || level;
  }
  const last = plates.at(-1);
  if (last !== undefined && before.length > 0) last.isKnown = false;
  for (const plate of plates) if (plate.letter === '' || plate.group === '') plate.isKnown = false;
  return plates;
}

/** The air that a plate names counts only where it is narrower than usual. */
function withoutAir(text: string): string {
  return text.replace(/T(?:a|amb)\b.*$|[+-]? ?\d+ ?°? ?C? ?(?:≤|<=|<) ?T(?:a|amb)\b.*?C\b/g, (air) => {
    const ends = [...air.replace(/[–−]/g, '-').matchAll(/([+-]?) ?(\d+)/g)].map(([, sign, number]) =>
      Number(`${sign}${number}`),
    );
    return Math.min(...ends) <= -20 && Math.max(...ends) >= 40 ? ' ' : ' narrow ';
  });
}

function opened(before: readonly string[]): Plate {
  const numbers = before.filter((word) => /^(?:M?[12]|3)$/.test(word)).map((word) => Number(word.replace('M', '')));
  const rest = before.filter((word) => !/^(?:M?[12]|3)$/.test(word));
  const mine = before[0] === 'I';
  const isKnown =
    before.length === 0 ||
    (/^II?$/.test(rest[0] ?? '') && numbers.length > 0 && /^[GD]?$/.test(rest[1] ?? '') && rest.length <= 2);
  const letter = mine ? 'M' : (rest[1] ?? '');
  return {
    letter,
    level: numbers.length > 0 ? Math.max(...numbers) - 1 : -1,
    group: '',
    degrees: 9999,
    isKnown,
    codes: 0,
  };
}

/** Takes a word into the plate; answers the word where it is a level. */
function take(plate: Plate, word: string): string {
  if (plate.group === '' && CODES.has(word)) {
    plate.codes += 1;
    return '';
  }
  if (plate.group === '' && /^(?:I|II|II[ABC]|IIB\+H2|III[ABC])$/.test(word)) {
    plate.group = word;
    const dust = word.startsWith('III');
    if (plate.letter !== '' && (dust !== (plate.letter === 'D') || (word === 'I') !== (plate.letter === 'M')))
      plate.isKnown = false;
    return '';
  }
  if (/^T(?:[1-6]|\d{2,3}C)$/.test(word)) {
    plate.degrees = plate.degrees === 9999 ? degreesOf(word) : Math.max(plate.degrees, degreesOf(word));
    return '';
  }
  if (/^(?:M[ab]|[GD][abc])$/.test(word)) {
    const marked = word.charCodeAt(1) - 97;
    if (plate.level === -1 || plate.letter === '') plate.letter = word.charAt(0);
    const agrees = plate.letter === word.charAt(0) && (plate.level === -1 || plate.level >= marked);
    plate.level = plate.level === -1 ? marked : Math.max(plate.level, marked);
    plate.isKnown = plate.isKnown && agrees;
    return word;
  }
  plate.isKnown = plate.isKnown && word === 'X';
  return '';
}
