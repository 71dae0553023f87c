/*
 * The return note in German: what came back, in what state, what is charged and why.
 * Invariant: the same amounts and the same rights as in English; nothing is worded as an admission.
 * Not here: working charges out (lib/pricing).
 * Read next: ../told-in.ts.
 */
export const RETURN_WORDS: Readonly<Record<string, string>> = {
  Booking: 'Buchung',
  'Your order': 'Ihre Bestellung',
  'Came back': 'Zurückgekommen',
  Pieces: 'Stücke',
  taken: 'gewählt',
  declined: 'abgelehnt',
  '{0} back': '{0} zurück',
  '{0} back, {1} missing': '{0} zurück, {1} fehlen',
  'No invoice.': 'Keine Rechnung.',
  'What is charged is invoiced under the terms of the quote.':
    'Berechnetes wird nach den Bedingungen des Angebots in Rechnung gestellt.',
  '{0}, {1}, did not come back with the rest.': '{0}, {1}, kam nicht mit dem Rest zurück.',
  'Return {0}: {1} was declared; its pieces are kept apart until they are washed.':
    'Rückgabe {0}: angegeben wurde {1}; die Stücke bleiben getrennt, bis sie gewaschen sind.',
  'To be looked at first': 'Zuerst anzusehen',
  good: 'gut',
  dirty: 'schmutzig',
  damaged: 'beschädigt',
  DAMAGED: 'BESCHÄDIGT',
  MISSING: 'FEHLT',
  'Return {0}: {1}': 'Rückgabe {0}: {1}',
  'At {0}. Declared before it was touched: {1}.': 'In {0}. Vor dem Anfassen angegeben: {1}.',
  'At {0}, brought by {1}. Declared before it was touched: {2}.':
    'In {0}, gebracht von {1}. Vor dem Anfassen angegeben: {2}.',
  'Serial number': 'Seriennummer',
  Piece: 'Stück',
  Condition: 'Zustand',
  Run: 'Laufzeit',
  'Went to': 'Ging nach',
  'no piece with a serial number': 'kein Stück mit Seriennummer',
  ready: 'bereit',
  quarantine: 'Sperrlager',
  workshop: 'Werkstatt',
  'Missing from it: {0}.': 'Daran fehlt: {0}.',
  'The limiter saw an overload: it is calibrated anew before it goes out again.':
    'Der Begrenzer hatte eine Überlast: Er wird neu kalibriert, bevor er wieder hinausgeht.',
  'Photographs {0}.': 'Fotos {0}.',
  'Counted pieces': 'Gezählte Teile',
  Sent: 'Gesendet',
  Back: 'Zurück',
  Unused: 'Unbenutzt',
  'Hired or sold': 'Miete oder Verkauf',
  hired: 'Miete',
  sold: 'Verkauf',
  Charges: 'Berechnetes',
  'Nothing is charged beyond the quote.': 'Über das Angebot hinaus wird nichts berechnet.',
  'Charges beyond the quote': 'Berechnetes über das Angebot hinaus',
  'What, and how it came about': 'Was, und wie es zustande kommt',
  'Total given back, {0}': 'Erstattung, {0}',
  'Total charged, {0}': 'Summe, {0}',
  'Nothing of this booking is still out.': 'Von dieser Buchung ist nichts mehr draußen.',
  'Still with you': 'Noch bei Ihnen',
  'Hire runs on for these; they have a note of their own when they are back.':
    'Dafür läuft die Miete weiter; sie bekommen einen eigenen Schein, wenn sie zurück sind.',
  'Serial or model number': 'Serien- oder Modellnummer',
  'Due back': 'Rückgabe fällig',
  'Off-hire notices': 'Abmeldungen von der Miete',
  '{0}: {1}, given by {2}, for {3}.': '{0}: {1}, von {2}, für {3}.',
  'Equipment that came back damaged, dirty or overloaded is not used again before a competent person has looked at it.':
    'Ausrüstung, die beschädigt, schmutzig oder überlastet zurückkam, wird erst wieder benutzt, wenn eine befähigte Person sie angesehen hat.',
  'Amounts for repair rest on what was seen at the return; what shows up later in the workshop is told before it is charged.':
    'Beträge für Reparatur beruhen auf dem, was bei der Rückgabe zu sehen war; was sich später in der Werkstatt zeigt, wird gesagt, bevor es berechnet wird.',
  'A limiter that saw an overload may have let a valve see more than its setting: have that valve looked at before it is moved again.':
    'Ein Begrenzer mit Überlast kann einer Armatur mehr als seine Einstellung zugemutet haben: diese Armatur ansehen lassen, bevor sie wieder bewegt wird.',
  'Please note': 'Bitte beachten',
  'Seen by both sides': 'Von beiden Seiten gesehen',
  'Signing says that the pieces were seen as they stand above; it takes nothing away from anyone’s right to object to a charge.':
    'Die Unterschrift sagt, dass die Stücke so gesehen wurden, wie sie oben stehen; das Recht, einer Berechnung zu widersprechen, bleibt jedem erhalten.',
  'For the hirer': 'Für den Mieter',
  'For the house': 'Für das Haus',

  'It was given up before it left the house, so no hire is charged.':
    'Es wurde aufgegeben, bevor es das Haus verließ, darum wird keine Miete berechnet.',
  'On hire from {0} to {1}, {2}.': 'In Miete vom {0} bis {1}, {2}.',
  'when off-hire notice {0} was given': 'als die Abmeldung {0} erteilt wurde',
  'when it came back': 'als es zurückkam',
  'when it was reported lost': 'als es verloren gemeldet wurde',
  'as agreed': 'wie vereinbart',
  'and still running: no notice was given and it is not back':
    'und läuft noch: Es gibt keine Abmeldung, und es ist nicht zurück',
  'as long as the last unit it went with': 'so lange wie das letzte Gerät, mit dem es ging',
  "At the cheapest mix of the quote's rates, {0}: {1}.":
    'Zur günstigsten Mischung der Mietsätze des Angebots, {0}: {1}.',
  '{0} each, times {1}': 'je {0}, mal {1}',
  '{0}, less {1} % as quoted': '{0}, abzüglich {1} % wie angeboten',
  'The hire comes to {0}; {1} of it stands in the quote.': 'Die Miete ergibt {0}; {1} davon stehen im Angebot.',
  '{0} % of the {1} of hire more.': '{0} % der {1} zusätzlicher Miete.',
  '{0} % of the {1} of hire less.': '{0} % der {1} weniger Miete.',
  '{0} % of the {1} of hire {2}.': '{0} % der {1} Miete ({2}).',
  more: 'mehr',
  less: 'weniger',
  'It came back dirty': 'Es kam schmutzig zurück',
  'It came back wet or silted': 'Es kam nass oder verschlammt zurück',
  'It came back from sewage': 'Es kam aus Abwasser zurück',
  'It came back with product on it': 'Es kam mit Produkt daran zurück',
  'It came back with something on it that nobody could name':
    'Es kam mit etwas daran zurück, das niemand benennen konnte',
  "{0}: cleaned at the house's price of {1}.": '{0}: gereinigt zum Preis des Hauses von {1}.',
  '{0}; the house has no price for cleaning it, so one is to be typed.':
    '{0}; für die Reinigung hat das Haus keinen Preis, darum ist einer einzutragen.',
  '{0}: {1} h in the workshop at {2}, parts for {3}.': '{0}: {1} h in der Werkstatt zu {2}, Teile für {3}.',
  '{0}: {1} h in the workshop at {2}.': '{0}: {1} h in der Werkstatt zu {2}.',
  '{0} an hour': '{0} je Stunde',
  'a price to be typed': 'einem einzutragenden Preis',
  'parts for {0}': 'Teile für {0}',
  'No more than its replacement value of {0}.': 'Nicht mehr als der Wiederbeschaffungswert von {0}.',
  'It did not come back': 'Es kam nicht zurück',
  '{0} did not come back': '{0} kamen nicht zurück',
  '{0}: replacement value {1}.': '{0}: Wiederbeschaffungswert {1}.',
  'It was charged as lost on return note {0} and has been found: the {1} charged there are given back.':
    'Es wurde auf dem Rückgabeschein {0} als verloren berechnet und ist gefunden: Die dort berechneten {1} werden erstattet.',
  'No damage waiver was taken.': 'Keine Haftungsbegrenzung war gewählt.',
  'The damage waiver covers it.': 'Die Haftungsbegrenzung gilt dafür.',
  'The damage waiver leaves out {0}.': 'Von der Haftungsbegrenzung ausgenommen: {0}.',
  'How it happened is not known yet, and decides whether the damage waiver covers it.':
    'Wie es geschah, ist noch nicht bekannt und entscheidet, ob die Haftungsbegrenzung gilt.',
  '{0} in the quote and {1}: {2} more at {3} each.': '{0} im Angebot und {1}: {2} mehr zu je {3}.',
  '{0} was used': '{0} benutzt',
  '{0} were used': '{0} benutzt',
  '{0}: {1} came back unused and is credited at {2} % of {3} each.':
    '{0}: {1} kam unbenutzt zurück und wird zu {2} % von je {3} gutgeschrieben.',
  '{0}: {1} came back unused and are credited at {2} % of {3} each.':
    '{0}: {1} kamen unbenutzt zurück und werden zu {2} % von je {3} gutgeschrieben.',
  'Not charged; {0} was worked out': 'Nicht berechnet; ermittelt waren {0}',
  '{0} was worked out': 'Ermittelt waren {0}',
};
