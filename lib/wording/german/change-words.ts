/*
 * What changed from one revision of a quote to the next, in German.
 * Invariant: the same figures in the same order.
 * Not here: finding the changes (lib/documents/words/quote-changes.ts).
 * Read next: ../told-in.ts.
 */
export const CHANGE_WORDS: Readonly<Record<string, string>> = {
  'Changed since {0}': 'Geändert seit {0}',
  '“{0}” is offered too, at {1}.': '„{0}“ wird auch angeboten, zu {1}.',
  '“{0}” is offered no longer.': '„{0}“ wird nicht mehr angeboten.',
  'Dates and site': 'Tage und Ort',
  Price: 'Preis',
  Assumptions: 'Annahmen',
  '{0}: dates and site': '{0}: Tage und Ort',
  '{0}: equipment': '{0}: Ausrüstung',
  '{0}: price': '{0}: Preis',
  '{0}: {1} in place of {2}.': '{0}: {1} statt {2}.',
  '{0} in place of {1}': '{0} statt {1}',
  'valves {0} in place of {1}': 'Armaturen {0} statt {1}',
  'strokes {0} in place of {1}': 'Hübe {0} statt {1}',
  'type {0} in place of {1}': 'Art {0} statt {1}',
  'size {0} in place of {1}': 'Nennweite {0} statt {1}',
  'torque to start {0} in place of {1}': 'Losbrechmoment {0} statt {1}',
  'now served': 'jetzt bedient',
  'now not served': 'jetzt nicht bedient',
  Place: 'Ort',
  'Persons in a crew': 'Personen je Trupp',
  'Hours of a shift': 'Stunden je Schicht',
  'Who operates': 'Wer bedient',
  'our people': 'unsere Leute',
  'your people': 'Ihre Leute',
  'Days priced': 'Berechnete Tage',
  Deposit: 'Anzahlung',
  'Added: {0}.': 'Neu: {0}.',
  'Gone: {0}.': 'Entfallen: {0}.',
  'Gone: {0}, which was {1}.': 'Entfallen: {0}, bisher {1}.',
  'And {0} more lines changed.': 'Und {0} weitere Positionen geändert.',
  'Now: {0}': 'Jetzt: {0}',
  'No longer: {0}': 'Nicht mehr: {0}',
  'Assumed now: {0}': 'Jetzt angenommen: {0}',
  'No longer assumed: {0}': 'Nicht mehr angenommen: {0}',
  '{0}.': '{0}.',
};
