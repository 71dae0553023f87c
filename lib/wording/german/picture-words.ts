/*
 * The lettering of the drawings beside questions, in German.
 * Invariant: short enough for its place; a word that is too long stays away and the sentence beside the drawing says it.
 * Not here: the drawings (lib/documents/guide), their questions (../german-questions.ts).
 * Read next: ../told-in.ts.
 */
export const PICTURE_WORDS: Readonly<Record<string, string>> = {
  actuator: 'Stellantrieb',
  'length ÷ 3.14': 'Länge ÷ 3.14',
  'tape once round': 'Maßband einmal herum',
  '6 − 4 = 2 bar across it': '6 − 4 = 2 bar Unterschied',
  'through wheel': 'durch das Rad',
  'with wheel': 'mit dem Rad',
  depth: 'Tiefe',
  angle: 'Winkel',
  protrusion: 'Überstand',
  'across flats': 'Schlüsselweite',
  top: 'oben',
  base: 'unten',
  'from above': 'von oben',
  steelwork: 'Stahlbau',
  'small pipe, handrail': 'Kleinrohr, Geländer',
  'vehicle distance': 'Abstand Fahrzeug',
};

/** Words of the trade that are too long for a drawing, as they stand in one. */
export const SHORT_IN_PICTURES: ReadonlyMap<string, string> = new Map([
  ['globe', 'Ventil'],
  ['butterfly', 'Klappe'],
  ['penstock', 'Schütz'],
  ['worm', 'Schnecke'],
  ['travelling nut', 'Wandermutter'],
  ['bevel', 'Kegelrad'],
  ['spur', 'Stirnrad'],
  ['depth to nut', 'Tiefe'],
  ['tapered square', 'konisch'],
]);
