/*
 * The words people use for a choice, in several languages, as data: first pattern that fits wins.
 * Invariant: every value is one of the shared vocabulary's; patterns see plain text (no case, no accents).
 * Not here: kinds of valves and what is not a valve (recognise-kind.ts).
 * Read next: read-cell.ts.
 */
import { CONDITIONS, DRIVEN_BY, GEARBOX_KINDS, NUT_SHAPES, SERVICES, STEM_KINDS } from '#lib/duty/schedule-line.ts';

/** Values of a choice with the patterns that mean them. */
export interface Choice<Value extends string> {
  readonly values: readonly Value[];
  readonly words: readonly (readonly [pattern: RegExp, value: Value])[];
}

function choice<const Value extends string>(
  values: readonly Value[],
  words: readonly (readonly [RegExp, Value])[],
): Choice<Value> {
  return { values, words };
}

export const ACTION_WORDS = choice(
  ['direct', 'reverse'],
  [
    [/revers|umgekehrt|invers/, 'reverse'],
    [/direct|normal|direkt/, 'direct'],
  ],
);

export const FLOWING_WORDS = choice(
  ['flowing', 'still'],
  [
    [
      /no flow|not flowing|^no$|^n$|still|static|stagnant|isolated|empty|shut|^0$|false|nein|^non$|leer|ruhend|sin caudal/,
      'still',
    ],
    [/flow|^yes$|^y$|running|^1$|true|^ja$|^oui$|^si$|live/, 'flowing'],
  ],
);

export const CONDITION_WORDS = choice(CONDITIONS, [
  [
    /seiz|stuck|jam|frozen|inoperable|not operable|inoperative|festgefressen|blockiert|bloque|grippe|agarrotad|emperrad|bloccat|заклин/,
    'seized',
  ],
  [/stiff|hard|tight|heavy|difficult|rust|corroded|schwergangig|dur\b|duro|dura|тугой/, 'stiff'],
  [
    /free|easy|good|operable|ok\b|smooth|works|working|fair|excellent|leichtgangig|libre|bon\b|bonne|bueno|buena|bom\b|boa\b|buono|хорош|исправ/,
    'free',
  ],
]);

export const NORMAL_POSITION_WORDS = choice(
  ['open', 'closed'],
  [
    [/closed|close|shut|^n\.?c\.?$|^c$|^no$|false|^0$|geschlossen|ferme|cerrad|fechad|chius|закрыт/, 'closed'],
    [/open|^n\.?o\.?$|^o$|^yes$|^y$|true|^1$|offen|ouvert|abiert|abert|apert|открыт/, 'open'],
  ],
);

export const STEM_WORDS = choice(STEM_KINDS, [
  [
    /non[- ]?rising|not rising|^nrs$|inside screw|nichtsteigend|non montante|no ascendente|fixa|non saliente|невыдвиж/,
    'non-rising',
  ],
  [/with (the )?wheel|wheel rises|rising wheel|rising handwheel|handrad steigend/, 'rising with the wheel'],
  [
    /rising|^rs$|os ?& ?y|os and y|osy|outside screw|steigend|montante|ascendente|saliente|выдвиж/,
    'rising through the wheel',
  ],
]);

export const THREAD_HAND_WORDS = choice(
  ['right', 'left'],
  [
    [/left|^lh$|^l$|links|gauche|izquierd|esquerd|sinistr/, 'left'],
    [/right|^rh$|^r$|rechts|droite|derech|direit|destr/, 'right'],
  ],
);

export const COLLAR_WORDS = choice(
  ['plain', 'rolling'],
  [
    [/roll|ball|needle|walz|kugel/, 'rolling'],
    [/plain|sleeve|bush|slid|gleit/, 'plain'],
  ],
);

export const GEARBOX_WORDS = choice(GEARBOX_KINDS, [
  [/worm|quarter|schneck|vis sans fin|sinfin|sem fim|vite senza|червяч/, 'worm'],
  [/travel|nut\b|link|scotch|mutter/, 'travelling nut'],
  [/bevel|mitre|miter|right angle|kegel|conique|conic|кониче/, 'bevel'],
  [/spur|helical|planet|stirn|droit|cilindric|цилиндр/, 'spur'],
]);

export const CLOSES_WORDS = choice(
  ['clockwise', 'anticlockwise'],
  [
    [/anti|counter|^ccw|^acw|left|^l$|^lh$|links|gauche|antihorari|izquierd|esquerd|sinistr|против/, 'anticlockwise'],
    [/clock|^cw|right|^r$|^rh$|rechts|horair|horari|derech|direit|destr|^im uhr|по час/, 'clockwise'],
  ],
);

export const DRIVEN_BY_WORDS = choice(DRIVEN_BY, [
  [
    /actuator|motori[sz]ed|electric|moti?on operated|stellantrieb|hand drive|pneumatic|hydraulic/,
    'actuator hand drive',
  ],
  [/chain ?wheel|chain/, 'chain wheel'],
  [/(gear|worm|bevel).*(nut|square|key)/, 'gearbox nut'],
  [/gear|worm|bevel|getriebe|reducteur|reductor|redutor|riduttore|редуктор/, 'gearbox wheel'],
  [/pillar|pedestal|floor ?stand|column|saule|colonne|columna|coluna/, 'pillar'],
  [/extension|spindle|gestange|rallonge/, 'extension spindle'],
  [/key ?cap|^cap\b|cap top|t[- ]?key|chapeau|capuchon|tee key|key/, 'key cap'],
  [/square|vierkant|carre|cuadr|quadr|квадрат/, 'square'],
  [/hand ?wheel|wheel|handrad|volant|rueda|маховик|steer/, 'handwheel'],
  [/nut|mutter|ecrou|tuerca|dado|porca/, 'nut'],
]);

export const MEASURED_AT_WORDS = choice(
  ['open', 'closed'],
  [
    [/clos|shut|zu\b|ferm|cerr|fech|chius/, 'closed'],
    [/open|auf\b|ouv|abi|aber|aper/, 'open'],
  ],
);

export const NUT_SHAPE_WORDS = choice(NUT_SHAPES, [
  [/taper|konisch|conique|conic/, 'tapered square'],
  [/hex|sechskant|6[- ]?kant/, 'hexagon'],
  [/pent|funfkant|5[- ]?kant|5 sided/, 'pentagon'],
  [/square|sq\b|vierkant|carre|cuadr|quadr|4 sided/, 'square'],
]);

export const NUT_WEAR_WORDS = choice(
  ['good', 'worn', 'rounded'],
  [
    [/round|rund/, 'rounded'],
    [/worn|wear|damag|abgenutzt|use\b|gastad/, 'worn'],
    [/good|ok\b|new|gut|bon\b|bueno|bom\b/, 'good'],
  ],
);

export const FACES_WORDS = choice(
  ['up', 'side', 'down'],
  [
    [/down|unten|bas\b|abajo|baixo|giu|overhead|inverted/, 'down'],
    [/side|horizontal|lateral|seit|wall/, 'side'],
    [/up|top|vertical|oben|haut|arriba|cima|alto/, 'up'],
  ],
);

export const SERVICE_WORDS = choice(SERVICES, [
  [/potable|drinking|trinkwasser|eau potable|agua potable|clean water|fresh water|wrc/, 'potable'],
  [/oxygen|\bo2\b|sauerstoff|oxygene|oxigen/, 'oxygen'],
  [/sewage|foul|waste ?water|effluent|sludge|abwasser|eaux usees|residual|esgoto/, 'sewage'],
  [/food|dairy|brew|lebensmittel|aliment/, 'food'],
  [/toxic|chlorine|ammonia|h2s|giftig|toxique/, 'toxic'],
  [/\S/, 'other'],
]);

/** yes or no in the languages that lists come in. */
export const YES_NO_WORDS = choice(
  ['yes', 'no'],
  [
    [
      /^(no|n|0|0\.0|false|none|nil|nein|non|nao|niet|nee|нет|否|无|absent|without|unlocked|open air|outdoors?)\b/,
      'no',
    ],
    [
      /^(yes|y|1|1\.0|true|x|ja|j|oui|o|si|s|sim|sì|да|是|有|present|fitted|with|locked|indoors?|chamber|confined)\b/,
      'yes',
    ],
  ],
);
