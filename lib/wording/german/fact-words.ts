/*
 * What may stand in a German sentence as it is: figures with their units, numbers of parts, marks, names of standards, quoted words.
 * Invariant: an English word is never a fact; a date written out becomes one in figures (lib/documents/words/written-forms.ts).
 * Not here: words that have a German wording (all-sentences.ts).
 * Read next: ../told-in.ts.
 */
const UNITS =
  'mm|cm|m|km|kg|kN|N|N·m|kN·m|lbf|lbf·ft|lb|ft|in|psi|bar|kPa|MPa|l|ml|l/s|l/min|m³/s|cfm|gal|min|s|h|d|rpm|hp|kW|kWh|Wh|Ah|dB|m/s|m/s²|ft/s|EUR|pers';
const DATE = String.raw`\b\d{1,2} (?:January|February|March|April|May|June|July|August|September|October|November|December) \d{4}\b`;
const FACT = new RegExp(
  String.raw`^(?:[\s\d.,:;…–—−+×/()°%§²³=≥≤<>·▲☐-]|“[^”]*”|${DATE}|\b(?:${UNITS})\b|(?<![a-z])[A-Z]{1,3}(?:\d|\b)|\b[A-Z]+(?:[-/]?[A-Z\d]+)+\b|\b(?:DN|PN|NPS|Class|Ex|Tr|ISO|EN|DIN|IEC|Ga|Gb|Gc|Db|Dc|Da)\b|\bTr\d+(?:x\d+)*\b|\b\d+(?:x\d+)+\b|\bdB\(A\))*$`,
  'u',
);

export function factWords(text: string): string | null {
  return FACT.test(text) ? text : null;
}
