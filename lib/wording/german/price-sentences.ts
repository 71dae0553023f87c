/*
 * How a price came about, in German: hire, waiver, delivery, discounts, payment, charges after the return.
 * Invariant: the same amounts, counts and conditions as in English.
 * Not here: what the house writes itself (terms, bands, price list), which the house words in German.
 * Read next: ../told-in.ts.
 */
export const PRICE_SENTENCES: Readonly<Record<string, string>> = {
  '{0} at the cheapest mix of rates, {1}: {2} each, times {3}.':
    '{0} zur günstigsten Mischung der Mietsätze, {1}: je {2}, mal {3}.',
  '{0} (the minimum is {1})': '{0} (mindestens {1})',
  'Made to order: indicative until the workshop has confirmed drawing, price and date.':
    'Auf Bestellung gebaut: unverbindlich, bis die Werkstatt Zeichnung, Preis und Termin bestätigt hat.',
  'Sold, not hired: {0} each, times {1}.': 'Verkauf, keine Miete: je {0}, mal {1}.',
  'Unused ones that come back are credited at {0} %.': 'Unbenutzt Zurückgegebenes wird zu {0} % gutgeschrieben.',
  'The damage waiver is no insurance.': 'Die Haftungsbegrenzung ist keine Versicherung.',
  'It leaves out {0}.': 'Ausgenommen sind: {0}.',
  'No damage waiver is taken: loss and damage are charged at cost, up to the replacement value.':
    'Keine Haftungsbegrenzung gewählt: Verlust und Schaden werden zu Kosten berechnet, höchstens bis zum Wiederbeschaffungswert.',
  'The customer collects and brings back.': 'Der Kunde holt ab und bringt zurück.',
  'Delivery and collection are priced for the band {0}.':
    'Lieferung und Abholung sind für den Bereich „{0}“ berechnet.',
  'Dry hire: labour steers the plan and is not part of the price.':
    'Miete ohne Bediener: Arbeitsstunden steuern den Plan und sind nicht im Preis enthalten.',
  'Operated hire: the hours of our people are priced as planned and charged as worked.':
    'Miete mit Bediener: Die Stunden unserer Leute sind wie geplant angesetzt und werden wie geleistet berechnet.',
  'Buying would have been cheaper after {0} days.': 'Nach {0} Tagen wäre ein Kauf günstiger gewesen.',
  'Damage waiver': 'Haftungsbegrenzung',
  '{0} % of the hire of {1}; sale items, delivery and labour are left out.':
    '{0} % der Miete von {1}; ohne Verkaufsartikel, Lieferung und Arbeit.',
  'It does not cover {0}.': 'Sie gilt nicht für: {0}.',
  'Delivery, {0}': 'Lieferung, {0}',
  'Collection, {0}': 'Abholung, {0}',
  'Band {0}: {1} with {2} kg included; the equipment weighs {3} kg without cases.':
    'Bereich „{0}“: {1}, {2} kg eingeschlossen; die Ausrüstung wiegt {3} kg ohne Koffer.',
  'Band {0}: {1} with {2} kg included; the equipment weighs {3} kg without cases, so {4} more at {5} each.':
    'Bereich „{0}“: {1}, {2} kg eingeschlossen; die Ausrüstung wiegt {3} kg ohne Koffer, darum zusätzlich {4} zu je {5}.',
  '{0} started hundred kilograms': '{0}-mal angefangene hundert Kilogramm',
  '{0} started hundreds of kilograms': '{0}-mal angefangene hundert Kilogramm',
  'Our operators': 'Unsere Bediener',
  '{0} crew hours as planned, at {1} an hour.': '{0} Truppstunden wie geplant, zu {1} je Stunde.',
  Discount: 'Nachlass',
  '{0} % off {1} of {2}: {3}.': '{0} % Nachlass auf {1} von {2}: {3}.',
  '{0} % off {1}, which is what is taxed as {2}, without the damage waiver: {3}.':
    '{0} % Nachlass auf {1}, den Teil mit der Steuer „{2}“, ohne Haftungsbegrenzung: {3}.',
  'On account: {0} is payable {1}.': 'Auf Rechnung: {0} sind zahlbar {1}.',
  'on receipt of the invoice': 'bei Erhalt der Rechnung',
  'within {0} days of the invoice': 'innerhalb von {0} Tagen nach Rechnungsdatum',
  'We need your order number with the acceptance.': 'Mit der Annahme brauchen wir Ihre Bestellnummer.',
  'A deposit of {0} %, {1}, is due with the order and before despatch: {2}.':
    'Eine Anzahlung von {0} %, {1}, ist mit der Bestellung und vor dem Versand fällig: {2}.',
  'The rest, {0}, is payable {1}.': 'Der Rest, {0}, ist zahlbar {1}.',
  'A lump sum.': 'Pauschale.',
  '{0} at {1} each.': '{0} zu je {1}.',
  '{0} on each of {1}, at {2} each a day.': '{0} an {1}, zu je {2} am Tag.',
  '{0} charged day': '{0} berechneten Tag',
  '{0} charged days': '{0} berechneten Tagen',
  '{0} lump sum': '{0} Pauschale',
  '{0} lump sums': '{0} Pauschalen',
  '{0} hour': '{0} Stunde',
  '{0} hours': '{0} Stunden',
  '{0} kilometre': '{0} Kilometer',
  '{0} kilometres': '{0} Kilometer',
  '{0} person': '{0} Person',
  '{0} persons': '{0} Personen',
  '{0} set': '{0} Satz',
  '{0} sets': '{0} Sätze',
  'Hired in for you from another house, whose terms hold for it too.':
    'Für Sie bei einem anderen Haus angemietet, dessen Bedingungen dafür auch gelten.',
  'Made to fit: indicative until the workshop has confirmed drawing, price and date.':
    'Angefertigt: unverbindlich, bis die Werkstatt Zeichnung, Preis und Termin bestätigt hat.',
  '{0} day is charged for {1} of hire.': '{0} Tag wird für {1} Miete berechnet.',
  '{0} days are charged for {1} of hire.': '{0} Tage werden für {1} Miete berechnet.',
  '{0} day is charged for {1} of hire, {2}.': '{0} Tag wird für {1} Miete berechnet, {2}.',
  '{0} days are charged for {1} of hire, {2}.': '{0} Tage werden für {1} Miete berechnet, {2}.',
  'without {0}': 'ohne {0}',
  'with {0}': 'mit {0}',
  '{0} week-end day': '{0} Wochenendtag',
  '{0} week-end days': '{0} Wochenendtage',
  '{0} holiday': '{0} Feiertag',
  '{0} holidays': '{0} Feiertage',
  '{0} transit day': '{0} Reisetag',
  '{0} transit days': '{0} Reisetage',
};
