/*
 * Recognises what a text speaks of: a kind of valve, an ordinary valve without its kind, or a thing that is not operated.
 * Invariant: misspelt words within two letters are still recognised; the first rule that fits wins, in the order below.
 * Not here: whether the row becomes a line (take-rows.ts).
 * Read next: read-line.ts, take-rows.ts.
 */
import type { ValveType } from '#lib/duty/schedule-line.ts';
import { editDistance, plainText } from './plain-text.ts';
import { remember } from './remember.ts';

export type Recognised =
  | { readonly kind: 'valve'; readonly type: ValveType; readonly word: string }
  /** A valve by its purpose, which says nothing of how it is built. */
  | { readonly kind: 'line valve'; readonly word: string }
  | { readonly kind: 'not operated'; readonly what: string; readonly reason: string };

const NOT_OPERATED: readonly (readonly [pattern: RegExp, what: string, reason: string])[] = [
  [
    /\bair ?(?:release |relief |vent(?:ing)? |vacuum )?(?:valve|v\b|vent)|^air$|airvalve|air[- ]?release|\bventouse|\bventosa|purgeur|vacuum (?:valve|breaker)|entluft|entluftung|воздушник|вантуз/,
    'air valve',
    'An air valve works by itself; nothing on it is turned through a stroke.',
  ],
  [
    /^(?!.*(?:screw[- ]?down|\bsdnr\b|stop[- ]check|globe)).*(?:non[- ]?return|\bcheck(?: ?valve)?\b)|\bnrv\b|reflux|back ?flow|clapet|ruckschlag|\bretencion|\bretencao|\bantiretorno|non ritorno|terugslag|обратный/,
    'non-return valve',
    'A non-return valve works by itself; nothing on it is turned through a stroke.',
  ],
  [
    /\bprv\b|pressure[- ](?:reduc|regul|sustain|relief|control)|reducing valve|relief valve|safety valve|\bpsv\b|altitude valve|float ?valve|ball ?float|solenoid|druckminder|sicherheitsventil|reductor de presion|schwimmer|reductora|soupape de surete/,
    'self-acting valve',
    'It works by itself; nothing on it is turned through a stroke.',
  ],
  [
    /\bmeter\b|flow ?meter|wasserzahler|\bcompteur|\bmedidor|\bcontador\b|contatore|\bgauge\b|manomet|sensor|data ?logger/,
    'meter or instrument',
    'A meter or instrument is not a valve.',
  ],
  [/\bpump\b|pumpe|\bpompe|\bbomba\b|\bpompa\b|motor\b/, 'pump', 'A pump is not a valve.'],
  [/strainer|\bfilter\b|filtre|filtro|schmutzfanger/, 'strainer', 'A strainer is not a valve.'],
  [
    /\b(?:bend|elbow|reducer|coupling|flange adaptor|flange adapter|dismantling joint|end ?cap|blank flange|blind flange|tee|cross)\b|\bbend(?=to)|\bbogen\b|\bcoude\b|\bcodo\b|\bkrummer\b|formstuck/,
    'pipe fitting',
    'A pipe fitting has nothing to turn.',
  ],
  [
    /\b(?:pipe|pipeline|main|conduit|duct|hose|rohr|rohrleitung|tuyau|conduite|tuberia|tubo|tubulacao|leiding)\b/,
    'pipe',
    'A pipe is not a valve.',
  ],
  [
    /\b(?:tank|reservoir|tower|manhole|well|borehole|bore hole|standpipe|kiosk|water point)\b|behalter|schacht$/,
    'structure',
    'It is a structure, not a valve.',
  ],
];

const VALVE_TYPES: readonly (readonly [pattern: RegExp, type: ValveType])[] = [
  [/knife|\bkgv\b|guillotin|plattenschieber|\bcuchilla/, 'knife gate'],
  [/penstock|sluice ?gate|\bschutz\b|schutzen|vanne murale|compuerta mural|wall gate|paratoia|adufa/, 'penstock'],
  [/butter? ?fly|\bbfv\b|klappe|papillon|mariposa|borboleta|farfalla|vlinder|дисков|затвор|蝶/, 'butterfly'],
  [/flex(?:ible)? ?wedge/, 'flexible wedge gate'],
  [/double[- ]disc|double[- ]disk/, 'double disc gate'],
  [/parallel[- ]?slide|parallelschieber/, 'parallel slide gate'],
  [/wedge|keilschieber|\bcuna\b/, 'wedge gate'],
  [
    /\bgate|sluice|\bslv\b|\bgv\b|\brsgv\b|\bnrs\b|os ?& ?y|schieber|robinet[- ]vanne|compuerta|comporta|gaveta|saracinesca|schuifafsluiter|zasuwa|задвижк|闸/,
    'gate',
  ],
  [
    /globe|\bsdnr\b|screw[- ]?down|stop[- ]check|angle (?:stop )?valve|needle valve|absperrventil|durchgangsventil|\bglobo\b|a soupape|soupape|vanne a clapet|клапан запорн|截止/,
    'globe',
  ],
  [/diaphragm|membran|diafragma/, 'diaphragm'],
  [/pinch|quetsch|manchon|manguito/, 'pinch'],
  [/plug ?valve|plug ?cock|\bplug\b|tournant conique|\bmacho\b|kukenhahn|пробков/, 'plug'],
  [/\bball\b|kugelhahn|boisseau|\besfera|\bbola\b|\bsfera\b|шаров|球阀/, 'ball'],
  [/hydrant|\bfh\b|hidrante|idrante|poteau incendie|bouche d.?incendie|гидрант/, 'hydrant'],
  [/stop ?(?:tap|cock)|curb ?stop|corporation|\bferrule\b|service (?:valve|cock)|ventanilla|anbohr/, 'stop tap'],
];

/** Any word for a valve, in several languages and with the usual slips. */
const VALVE_WORD =
  /valves?|\bvave\b|vavle|valva\b|vanne|valvula|valvola|armatur|absperr|afsluiter|robinet|\bkran\b|кран|арматур|阀|\bve?rlve\b/;
/** Purposes that stand for a valve when they are the whole text. */
const PURPOSE =
  /^(?:control|isolat\w*|boundary|wash ?outs?|scour|blow ?off|drain|section(?:al)?|throttl\w*|stop|line|block|root|by ?pass|inlet|outlet)$/;

/** Words long enough that two wrong letters still mean them. */
const LONG_WORDS: readonly (readonly [word: string, type: ValveType])[] = [
  ['butterfly', 'butterfly'],
  ['diaphragm', 'diaphragm'],
  ['penstock', 'penstock'],
];

export const recogniseKind: (text: string) => Recognised | null = remember(recognise);

function recognise(text: string): Recognised | null {
  const plain = plainText(text).replace(/[-_/]+/g, ' ');
  if (plain === '') return null;
  const not = NOT_OPERATED.find(([pattern]) => pattern.test(plain));
  const type = valveTypeIn(plain);
  if (not !== undefined && !(type !== undefined && isOnlyContext(not[1]))) {
    const lineToo = isOnlyContext(not[1]) && speaksOfValve(plain);
    if (!lineToo) return { kind: 'not operated', what: not[1], reason: not[2] };
  }
  if (type !== undefined) return { kind: 'valve', type, word: text.trim() };
  return speaksOfValve(plain) ? { kind: 'line valve', word: text.trim() } : null;
}

function speaksOfValve(plain: string): boolean {
  return VALVE_WORD.test(plain) || PURPOSE.test(plain);
}

/** Pipes, fittings, pumps and tanks are named in texts about valves, to say where the valve is. */
function isOnlyContext(what: string): boolean {
  return ['pipe', 'pipe fitting', 'structure', 'pump', 'strainer', 'meter or instrument'].includes(what);
}

function valveTypeIn(plain: string): ValveType | undefined {
  const found = VALVE_TYPES.find(([pattern]) => pattern.test(plain));
  if (found) return found[1];
  for (const word of plain.split(/[^\p{L}]+/u)) {
    if (word.length < 7) continue;
    const close = LONG_WORDS.find(([name]) => editDistance({ a: word, b: name, limit: 2 }) <= 2);
    if (close) return close[1];
  }
  return undefined;
}
