/*
 * Headings, terms, cautions and other fixed words of quote, site sheet and return note in German.
 * Invariant: every caution says the same as its English one, and nothing is worded as an approval.
 * Not here: findings (rule-, place-, duty-sentences.ts), prices (price-sentences.ts), pictures (drawing-words.ts).
 * Read next: ../told-in.ts, ../../documents/papers/paper-language.ts.
 */
export const PAPER_WORDS: Readonly<Record<string, string>> = {
  For: 'Für',
  Quote: 'Angebot',
  'Site sheet': 'Baustellenblatt',
  'Return note': 'Rückgabeschein',
  '{0} · revision {1}': '{0} · Fassung {1}',
  'Estimates until measured. Local codes, the valve maker’s data and competent persons decide.':
    'Schätzungen, bis gemessen wird. Örtliche Vorschriften, Herstellerangaben und befähigte Personen entscheiden.',
  Site: 'Ort',
  'Hire window': 'Mietzeit',
  Crews: 'Trupps',
  Crew: 'Trupp',
  'Your reference': 'Ihr Zeichen',
  '{0} of {1}, {2} h a shift, {3}': '{0} zu je {1} Personen, {2} h je Schicht, {3}',
  'with our operators': 'mit unseren Bedienern',
  'dry hire': 'Miete ohne Bediener',
  Issued: 'Ausgestellt',
  'Valid until': 'Gültig bis',

  Options: 'Varianten',
  'This quote offers {0} options for the same schedule; one of them is ordered. Each has its own price, kits and lines below.':
    'Dieses Angebot nennt {0} Varianten für dieselbe Liste; eine davon wird bestellt. Jede hat unten eigenen Preis, eigene Sätze und Positionen.',
  'Option {0}: {1}': 'Variante {0}: {1}',
  'as asked': 'wie angefragt',
  'As asked': 'Wie angefragt',
  Scope: 'Umfang',
  'This quote covers portable powered operators, with heads, adapters, extensions and restraints, for {0} of your schedule.':
    'Dieses Angebot umfasst tragbare Antriebe mit Köpfen, Adaptern, Verlängerungen und Drehmomentstützen für {0} Ihrer Liste.',
  'This quote covers portable powered operators, with heads, adapters, extensions and restraints, for {0} on {1} of your schedule.':
    'Dieses Angebot umfasst tragbare Antriebe mit Köpfen, Adaptern, Verlängerungen und Drehmomentstützen für {0} in {1} Ihrer Liste.',
  'Every valve of the schedule is served.': 'Jede Armatur der Liste wird bedient.',
  'Reasons and ways out are below.': 'Gründe und Auswege stehen unten.',
  'No equipment fits {0} as the list stands.': 'Für {0} passt keine Ausrüstung, so wie die Liste steht.',
  'The time and stock there are do not reach for {0}.': 'Zeit und Bestand reichen nicht für {0}.',
  '{0} of {1} valves that equipment fits are served by {2} in {3}; chosen for {4}, {5}.':
    '{0} von {1} Armaturen, für die Ausrüstung passt, sind eingeplant ({2}, {3}); gewählt nach: {4}, {5}.',
  'least cost': 'geringste Kosten',
  'fewest pieces': 'wenigste Teile',
  'shortest time': 'kürzeste Zeit',
  'the surest first visit': 'sicherster erster Besuch',
  proven: 'bewiesen',
  'within {0} % of the bound ({1})': 'höchstens {0} % über der Schranke ({1})',
  'gap reached': 'Abstand erreicht',
  'time used up': 'Zeit aufgebraucht',
  'nodes used up': 'Aufwand aufgebraucht',
  'Site: {0}.': 'Ort: {0}.',
  'Power sources allowed: {0}': 'Erlaubte Energiequellen: {0}',
  'Enclosed place': 'Enger Raum',
  'Hazardous zone: {0}': 'Ex-Zone: {0}',
  'Hazardous area: {0}': 'Ex-Bereich: {0}',
  'not given': 'nicht angegeben',
  'temperature class {0}': 'Temperaturklasse {0}',
  'gas group {0}': 'Gasgruppe {0}',

  'Price for {0} of hire': 'Preis für die Miete ({0})',
  'Item and how its price came about': 'Posten und wie sein Preis zustande kommt',
  Number: 'Nummer',
  Tax: 'Steuer',
  'Net total': 'Summe ohne Steuer',
  '{0}, {1} % on {2}': '{0}, {1} % auf {2}',
  'Total to pay, {0}': 'Zu zahlen, {0}',
  'Total to pay': 'Zu zahlen',
  'Deposit due with the order, part of the total': 'Anzahlung mit der Bestellung, Teil der Summe',
  Payment: 'Zahlung',
  'Prices are in {0}, worked from our rates in {1} at the rate that holds on {2}: 1 {3} is {4}.':
    'Preise in {0}, umgerechnet aus unseren Mietsätzen in {1} zum Kurs vom {2}: 1 {3} sind {4}.',
  'In {0}, as quoted. What the house prices in {1} is turned over at the rate that was frozen with the quote: 1 {2} is {3}.':
    'In {0}, wie angeboten. Was das Haus in {1} berechnet, ist zum Kurs umgerechnet, der mit dem Angebot festgehalten wurde: 1 {2} sind {3}.',
  'Rates and charges are those that hold on {0}, the first day of hire.':
    'Mietsätze und Gebühren sind die vom {0}, dem ersten Miettag.',
  "No delivery band is agreed with this customer yet: the house's first band is assumed.":
    'Mit diesem Kunden ist noch kein Lieferbereich vereinbart: Der erste Bereich des Hauses ist angenommen.',
  'pers.': 'Pers.',
  Dates: 'Tage',
  'Valves served': 'Bediente Armaturen',
  'Hours of the crews': 'Stunden der Trupps',
  'Mass of the kits': 'Masse der Sätze',
  'of it deposit': 'davon Anzahlung',

  'Kits, crew by crew': 'Sätze, Trupp für Trupp',
  Count: 'Anzahl',
  Equipment: 'Ausrüstung',
  'Crew {0}': 'Trupp {0}',
  'Crew {0}: not needed for this plan': 'Trupp {0}: für diesen Plan nicht nötig',
  'Crew {0}: {1}, {2}, {3}': 'Trupp {0}: {1}, {2}, {3}',
  'not in the catalogue given': 'nicht im vorliegenden Katalog',
  'Lines and what serves them': 'Positionen und was sie bedient',
  'Equal valves stand together.': 'Gleiche Armaturen stehen zusammen.',
  'Torques are at the wheel or nut, the worse direction.':
    'Drehmomente gelten an Rad oder Mutter, in der ungünstigeren Richtung.',
  '▲ numbers a warning told below.': '▲ nummeriert eine Warnung, die unten steht.',
  'Basis of a value: M measured, S stated, N from a standard or table, C computed, R rule of thumb, A assumed.':
    'Grundlage eines Wertes: M gemessen, S angegeben, N aus Norm oder Tabelle, C berechnet, R Faustregel, A angenommen.',
  Valves: 'Armaturen',
  'To start': 'Losbrechen',
  'Never above': 'Nie über',
  continued: 'Fortsetzung',
  'Settings, turns and times of each line are on the site sheet; the working is on the calculation sheet.':
    'Einstellungen, Umdrehungen und Zeiten jeder Position stehen auf dem Baustellenblatt; der Rechengang steht auf dem Rechenblatt.',
  'Warnings about lines': 'Warnungen zu Positionen',
  Warning: 'Warnung',
  Lines: 'Positionen',
  'Lines that are not served': 'Nicht bediente Positionen',
  Why: 'Warum',
  'What would change it': 'Was es ändern würde',
  'Ask the Desk.': 'Bitte das Haus fragen.',
  'Allow more days, another crew, or other dates.': 'Mehr Tage, einen weiteren Trupp oder andere Tage zulassen.',
  'Equipment fits this line, but too few pieces are free on these dates: {0}.':
    'Für diese Position passt Ausrüstung, aber an diesen Tagen sind zu wenige Stücke frei: {0}.',
  '{0}: {1} wanted, {2} free': '{0}: {1} gebraucht, {2} frei',
  'Equipment fits this line, but the hours of the crews in these days do not reach for all of its valves.':
    'Für diese Position passt Ausrüstung, aber die Stunden der Trupps reichen in diesen Tagen nicht für alle ihre Armaturen.',

  'What was assumed': 'Was angenommen wurde',
  'The list did not say these things. The kits cover the ranges shown; measured values make the plan surer and often cheaper.':
    'Das sagte die Liste nicht. Die Sätze decken die gezeigten Bereiche ab; Messwerte machen den Plan sicherer und oft günstiger.',
  Value: 'Wert',
  'Taken as': 'Angenommen als',
  'If it is wrong': 'Wenn es nicht stimmt',
  'Wheel diameter': 'Raddurchmesser',
  'Wheel dish': 'Kröpfung des Rades',
  'Nut across flats': 'Schlüsselweite der Mutter',
  'Depth to the nut': 'Tiefe bis zur Mutter',
  'Stem above the wheel': 'Spindel über dem Rad',
  'Turns for one stroke': 'Umdrehungen je Hub',
  'Torque to start, opening': 'Losbrechmoment, Öffnen',
  'Torque to start, closing': 'Losbrechmoment, Schließen',
  'Torque the valve must never see': 'Drehmoment, das die Armatur nie bekommen darf',
  'Highest input speed': 'Höchste Drehzahl',
  'Shortest stroke time': 'Kürzeste Hubzeit',
  Stem: 'Spindel',
  'may rise through the wheel': 'kann durch das Rad steigen',
  '{0} ({1})': '{0} ({1})',
  '{0} ({1}) ({2})': '{0} ({1}) ({2})',
  '{0} in all; {1} values, each on the site sheet': 'insgesamt {0}; {1} Werte, jeder auf dem Baustellenblatt',
  'The adapter carried may not grip; the next size has to be sent.':
    'Der mitgeführte Adapter greift vielleicht nicht; die nächste Größe muss nachkommen.',
  'The socket may not fit; another has to be sent.':
    'Der Steckeinsatz passt vielleicht nicht; ein anderer muss nachkommen.',
  'The key may be too short or too long to work with.':
    'Der Bedienschlüssel kann zum Arbeiten zu kurz oder zu lang sein.',
  'The work takes longer or shorter; count from the closed end and do not trust the figure.':
    'Die Arbeit dauert länger oder kürzer; von der geschlossenen Stellung aus zählen und der Zahl nicht trauen.',
  'The valve may need more than the limiter’s ceiling and then does not move, or needs less and is at risk if the limiter starts too high.':
    'Die Armatur kann mehr brauchen als die Obergrenze des Begrenzers und bewegt sich dann nicht, oder sie braucht weniger und ist gefährdet, wenn der Begrenzer zu hoch beginnt.',
  'The valve may be weaker than thought: start low and stop at the first sign of yielding.':
    'Die Armatur kann schwächer sein als gedacht: niedrig anfangen und beim ersten Zeichen von Nachgeben aufhören.',
  'Closing faster than the pipeline allows can cause a pressure surge.':
    'Schneller zu schließen, als die Leitung erlaubt, kann einen Druckstoß auslösen.',
  'A stem that rises through the wheel needs an open-centre head; a closed one would be forced off.':
    'Eine Spindel, die durch das Rad steigt, braucht einen Hohlkopf; ein geschlossener würde abgedrückt.',

  'Not included': 'Nicht enthalten',
  'Operating, isolating, draining or repairing valves, unless the scope above says otherwise.':
    'Bedienen, Freischalten, Entleeren oder Instandsetzen von Armaturen, wenn der Umfang oben nichts anderes sagt.',
  'Permits, traffic management, confined-space entry and gas testing.':
    'Erlaubnisse, Verkehrssicherung, Einsteigen in enge Räume und Freimessen.',
  'Damage to valves, spindles, gearboxes or pipework that are worn, corroded or seized.':
    'Schäden an Armaturen, Spindeln, Getrieben oder Rohrleitungen, die abgenutzt, korrodiert oder fest sind.',
  'Fuel, compressed air and mains supply on site.': 'Kraftstoff, Druckluft und Netzanschluss vor Ort.',
  Cautions: 'Vorsicht',
  'All torques, turns and times are estimates from the list until they are measured at the valve.':
    'Alle Drehmomente, Umdrehungen und Zeiten sind Schätzungen aus der Liste, bis sie an der Armatur gemessen sind.',
  'Local codes, the valve maker’s data and licensed or competent persons decide whether and how a valve may be operated. This paper does not approve the work.':
    'Örtliche Vorschriften, Angaben des Armaturenherstellers und zugelassene oder befähigte Personen entscheiden, ob und wie eine Armatur bedient werden darf. Dieses Papier gibt die Arbeit nicht frei.',
  'Isolation, permits to work, confined-space, hazardous-area and traffic rules of the place come first.':
    'Freischaltung, Arbeitserlaubnisse und die Regeln des Ortes für enge Räume, Ex-Bereiche und Verkehr gehen vor.',
  'Know before you start what you will do if the valve breaks or will not shut.':
    'Vor dem Anfang wissen, was zu tun ist, wenn die Armatur bricht oder nicht schließt.',
  'No powered drive is held by hand alone: the restraint named here, or one agreed with us, is always fitted.':
    'Kein Antrieb wird nur mit der Hand gehalten: Die hier genannte oder eine mit uns vereinbarte Drehmomentstütze ist immer angebaut.',
  Terms: 'Bedingungen',
  Acceptance: 'Annahme',
  'We order {0} described in {1}, with its assumptions, cautions and terms.':
    'Wir bestellen {0} nach {1} mit den Annahmen, Vorsichtshinweisen und Bedingungen.',
  'the hire': 'die Miete',
  'the one option marked here, as it is': 'die eine hier angekreuzte Variante, so wie sie ist,',
  '{0}, revision {1}': '{0}, Fassung {1}',
  '{0}, option {1}': '{0}, Variante {1}',
  'Name and position': 'Name und Funktion',
  'Signature and date': 'Unterschrift und Datum',
  'Purchase order': 'Bestellnummer',
  Name: 'Name',
};
