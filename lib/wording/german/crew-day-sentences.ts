/*
 * What the planned days of a crew ask of people, in German: vibration, noise, lifts, hours.
 * Invariant: limits and figures as in English, and the law of the place and competent persons decide.
 * Not here: working the figures out (lib/planning).
 * Read next: ../told-in.ts.
 */
export const CREW_DAY_SENTENCES: Readonly<Record<string, string>> = {
  'The crews’ days': 'Die Tage der Trupps',
  'What each day asks of people; screening figures.':
    'Was jeder Tag den Menschen abverlangt; Richtwerte zur Vorprüfung.',
  Day: 'Tag',
  'At the drive': 'Am Antrieb',
  'A(8) m/s²': 'A(8) m/s²',
  Points: 'Punkte',
  'In turns': 'Im Wechsel',
  'L_EX,8h dB(A)': 'L_EX,8h dB(A)',
  'Heaviest piece': 'Schwerstes Teil',
  'Passes: {0}.': 'Überschreitet: {0}.',
  'vibration limit': 'Grenzwert Vibration',
  'noise limit': 'Grenzwert Lärm',
  'vibration action value': 'Auslösewert Vibration',
  'upper noise action value': 'oberer Auslösewert Lärm',
  'lower noise action value': 'unterer Auslösewert Lärm',
  'longer than the shift': 'länger als die Schicht',
  'Do not work these days as they stand': 'Diese Tage so nicht arbeiten',
  'For people’s sake': 'Zum Schutz der Menschen',
  'Good to know of these days': 'Gut zu wissen zu diesen Tagen',
  'Heaviest case in and out of the vehicle: {0}, {1}': 'Schwerster Koffer beim Ein- und Ausladen: {0}, {1}',
  'one person': 'eine Person',
  'one person, near the limit': 'eine Person, nahe der Grenze',
  'two persons': 'zwei Personen',
  'mechanical aid': 'Hebehilfe',
  'Screening figures from the makers’ declared values, which often understate what the hands and ears get: measured values and the law of the place decide, and a competent person assesses the risk.':
    'Richtwerte aus den Angaben der Hersteller, die oft weniger nennen, als Hände und Ohren abbekommen: Messwerte und das Recht des Ortes entscheiden, und eine befähigte Person beurteilt die Gefährdung.',
  'Vibration is for the person who holds the drive through all powered strokes of the day; “in turns” is for each where all persons of the crew hold it equally long.':
    'Die Vibration gilt für die Person, die den Antrieb bei allen Antriebshüben des Tages hält; „im Wechsel“ gilt für jede, wenn alle Personen des Trupps ihn gleich lang halten.',
  'Noise is for everyone who stays near the drive, without hearing protection.':
    'Der Lärm gilt für alle, die in der Nähe des Antriebs bleiben, ohne Gehörschutz.',
  'No other vibration or noise of that day is counted.':
    'Andere Vibration und anderer Lärm des Tages sind nicht mitgezählt.',
  'Values in the European directives 2002/44/EC and 2003/10/EC: vibration A(8) action 2.5, limit 5 m/s² (100 and 400 points); noise L_EX,8h action 80 and 85, limit 87 dB(A).':
    'Werte der Richtlinien 2002/44/EG und 2003/10/EG: Vibration A(8) Auslösewert 2.5, Grenzwert 5 m/s² (100 und 400 Punkte); Lärm L_EX,8h Auslösewerte 80 und 85, Grenzwert 87 dB(A).',

  '{0}, above the action value of {1}: {2}. Give breaks and warm hands, and see that health surveillance is in place.':
    '{0}, über dem Auslösewert von {1}: {2}. Für Pausen und warme Hände sorgen und dafür, dass arbeitsmedizinische Vorsorge stattfindet.',
  'Crew {0}, day {1}': 'Trupp {0}, Tag {1}',
  'Crew {0}, day {1}: {2} at the drive is A(8) {3} m/s² for one person':
    'Trupp {0}, Tag {1}: {2} am Antrieb sind A(8) {3} m/s² für eine Person',
  'Crew {0}, day {1}: {2} at the drive is A(8) {3} m/s² ({4} with the longest strokes) for one person':
    'Trupp {0}, Tag {1}: {2} am Antrieb sind A(8) {3} m/s² ({4} bei den längsten Hüben) für eine Person',
  'a second person to take turns would help': 'eine zweite Person zum Abwechseln würde helfen',
  'take turns between {0} persons ({1} each)': 'zwischen {0} Personen abwechseln (je {1})',
  'take turns between {0} persons ({1} each, still above the action value)':
    'zwischen {0} Personen abwechseln (je {1}, immer noch über dem Auslösewert)',
  '{0}, or spread the work over {1} of the {2} days, which keeps below it':
    '{0} oder die Arbeit auf {1} der {2} Tage verteilen, was darunter bleibt',
  '{0}, which passes the limit value of {1}: nobody holds the drive alone; {2}, and stop in time.':
    '{0}, was den Grenzwert von {1} überschreitet: Niemand hält den Antrieb allein; {2}, und rechtzeitig aufhören.',
  '{0}, which may pass the limit value of {1}: nobody holds the drive alone; {2}, and stop in time.':
    '{0}, was den Grenzwert von {1} überschreiten kann: Niemand hält den Antrieb allein; {2}, und rechtzeitig aufhören.',
  '{0}, which passes the limit value of {1}: allow more days, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreitet: mehr Tage zulassen, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, which may pass the limit value of {1}: allow more days, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreiten kann: mehr Tage zulassen, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, which passes the limit value of {1}, and {2} persons who take turns still have {3} at the most: allow more days, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreitet, und {2} Personen im Wechsel haben immer noch bis zu {3}: mehr Tage zulassen, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, which may pass the limit value of {1}, and {2} persons who take turns still have {3} at the most: allow more days, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreiten kann, und {2} Personen im Wechsel haben immer noch bis zu {3}: mehr Tage zulassen, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, which passes the limit value of {1}: allow more days, hand valves to {2}, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreitet: mehr Tage zulassen, Armaturen abgeben an {2}, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, which passes the limit value of {1}, and {2} persons who take turns still have {3} at the most: allow more days, hand valves to {4}, bring more persons or use a drive with less vibration; do not work the day as it stands.':
    '{0}, was den Grenzwert von {1} überschreitet, und {2} Personen im Wechsel haben immer noch bis zu {3}: mehr Tage zulassen, Armaturen abgeben an {4}, mehr Personen mitbringen oder einen Antrieb mit weniger Vibration benutzen; den Tag so nicht arbeiten.',
  '{0}, hand valves to {1}': '{0}, Armaturen abgeben an {1}',
  '{0} ({1} days free)': '{0} ({1} Tage frei)',
  '{0}: its work would fill {1}; it is spread over {2}, so that a person’s vibration on any day is less.':
    '{0}: Die Arbeit füllte {1}; sie ist auf {2} verteilt, damit die Vibration einer Person an jedem Tag geringer ist.',
  '{0}: L_EX,8h is {1} dB(A) near the drive without hearing protection, past the limit value of {2}, which counts at the ear under protection: everyone near wears protection that takes off at least {3} dB in real wear, and others keep away.':
    '{0}: L_EX,8h ist {1} dB(A) in der Nähe des Antriebs ohne Gehörschutz, über dem Grenzwert von {2}, der am Ohr unter dem Gehörschutz zählt: Alle in der Nähe tragen Gehörschutz, der im wirklichen Gebrauch mindestens {3} dB wegnimmt, und andere bleiben fern.',
  '{0}: L_EX,8h is {1} dB(A) near the drive without hearing protection, above the upper action value of {2}: hearing protection is worn near the drive.':
    '{0}: L_EX,8h ist {1} dB(A) in der Nähe des Antriebs ohne Gehörschutz, über dem oberen Auslösewert von {2}: In der Nähe des Antriebs wird Gehörschutz getragen.',
  '{0}: L_EX,8h is {1} dB(A) near the drive without hearing protection, above the lower action value of {2}: have hearing protection at hand.':
    '{0}: L_EX,8h ist {1} dB(A) in der Nähe des Antriebs ohne Gehörschutz, über dem unteren Auslösewert von {2}: Gehörschutz bereithalten.',
  '{0}: the heaviest piece is {1} with {2}, more than two persons lift: use a lifting aid.':
    '{0}: Das schwerste Teil ist {1} mit {2}, mehr als zwei Personen heben: eine Hebehilfe benutzen.',
  '{0}: the heaviest piece is {1} with {2}, which two persons lift together.':
    '{0}: Das schwerste Teil ist {1} mit {2}, das zwei Personen zusammen heben.',
  '{0}: the heaviest piece is {1} with {2}, above the screening filter at any height at this pace ({3} at waist height): two lift it, or it is lifted seldom and close to the body.':
    '{0}: Das schwerste Teil ist {1} mit {2}, über dem Richtwert in jeder Höhe bei diesem Takt ({3} in Hüfthöhe): Zwei heben es, oder es wird selten und nah am Körper gehoben.',
  '{0}: the heaviest piece is {1} with {2}, above the screening filter from the ground ({3}) and within it at waist height ({4}): lift it from a tailboard or a stand, close to the body, or two together.':
    '{0}: Das schwerste Teil ist {1} mit {2}, über dem Richtwert vom Boden aus ({3}) und darunter in Hüfthöhe ({4}): von einer Ladefläche oder einem Ständer heben, nah am Körper, oder zu zweit.',
  '{0}: the heaviest piece is {1} with {2}, within the screening filter from the ground up.':
    '{0}: Das schwerste Teil ist {1} mit {2}, vom Boden an unter dem Richtwert.',
  'Lifting index {0} (limit {1}) for one person from the ground to working height.':
    'Hebeindex {0} (Grenze {1}) für eine Person vom Boden bis Arbeitshöhe.',
  'The lifting equation does not speak of {0}; have a competent person look at these lifts.':
    'Die Hebegleichung gilt nicht für {0}; diese Hebevorgänge von einer befähigten Person ansehen lassen.',
  'these lifts ({0})': 'diese Hebevorgänge ({0})',
  'those at {0} of {1} valves ({2})': 'die an {0} von {1} Armaturen ({2})',
  '{0}, nor of {1}': '{0}, und auch nicht für {1}',
  'outside {0}': 'außerhalb {0}',
  'more than eight hours of lifting': 'mehr als acht Stunden Heben',
  'seated or kneeling': 'sitzend oder kniend',
  'a cramped or enclosed place': 'enger oder umschlossener Raum',
  'an unstable load': 'unruhige Last',
  'carried more than a step or two': 'mehr als ein, zwei Schritte getragen',
  'shovelled or wheeled in a barrow': 'geschaufelt oder gekarrt',
  'faster than about {0} m/s': 'schneller als etwa {0} m/s',
  'poor or unsteady footing': 'schlechter oder unsicherer Stand',
  'lifted by two or more persons': 'von zwei oder mehr Personen gehoben',
  'beyond the reach, height or pace that it allows any mass for':
    'jenseits von Reichweite, Höhe oder Takt, für die sie irgendeine Masse zulässt',
  '{0}: the work takes {1} h, {2} more than the shift, as no valve is left half done: start early or leave a valve for another day.':
    '{0}: Die Arbeit dauert {1} h, {2} länger als die Schicht, weil keine Armatur halb fertig bleibt: früh anfangen oder eine Armatur für einen anderen Tag lassen.',
  'Likewise on day {0}.': 'Ebenso an Tag {0}.',
  'Likewise on days {0}.': 'Ebenso an den Tagen {0}.',
};
