/*
 * What the rules on place, supply, restraint, people and the house's own rules say, in German.
 * Invariant: a wording for every sentence that can be said; cautions name the same facts and defer to the same authority.
 * Not here: rules on the valve and the chain (rule-sentences.ts).
 * Read next: ../told-in.ts.
 */
export const PLACE_SENTENCES: Readonly<Record<string, string>> = {
  '{0}: {1}': '{0}: {1}',
  '{0} is left out.': '{0} bleibt weg.',
  '{0} would be anchored there.': '{0} würde dort verankert.',
  '{0} would be chained there.': '{0} würde dort angekettet.',
  '{0} has {1}.': '{0} wiegt {1}.',
  'The crews have {0}.': 'Die Trupps haben {0}.',
  '{0} with {1} has none.': '{0} mit {1} hat keinen.',
  '{0} may take more: a turns counter is required.': '{0} kann mehr brauchen: Ein Umdrehungszähler ist Pflicht.',

  '{0}: {1} with {2} is {3} m/s² A(8) for one person, above the action value of {4}: share the work, spread it over days.':
    '{0}: {1} mit {2} sind {3} m/s² A(8) für eine Person, über dem Auslösewert von {4}: die Arbeit teilen, auf mehr Tage verteilen.',
  '{0} makes {1} dB(A) at the ear: hearing protection for everyone near.':
    '{0} macht {1} dB(A) am Ohr: Gehörschutz für alle in der Nähe.',
  '{0} has {1}: two persons lift it.': '{0} wiegt {1}: Zwei Personen heben das Teil.',
  '{0} has {1}; a crew of {2} does not lift that by hand.': '{0} wiegt {1}; ein Trupp von {2} hebt das nicht von Hand.',
  '{0} holds packs of {1} Wh: dangerous goods by {2}, to be declared and booked.':
    '{0} enthält Akkus von {1} Wh: Gefahrgut ({2}), anzumelden und zu buchen.',
  '{0} travels drained, and fuel is never in its case; fuel is bought on site.':
    '{0} reist entleert, und Kraftstoff ist nie im Koffer; Kraftstoff wird vor Ort gekauft.',

  'No zone is given: the place is taken as not hazardous.':
    'Keine Ex-Zone ist angegeben: Der Ort gilt als nicht explosionsgefährdet.',
  'Nothing is said of the place being enclosed: open air is assumed.':
    'Von einem engen Raum ist nichts gesagt: Arbeit im Freien ist angenommen.',
  'Nothing is said of an anchor: look for one before the visit.':
    'Von einem Haltepunkt ist nichts gesagt: vor dem Besuch einen suchen.',
  'Nothing is said of which way the wheel faces: up is assumed.':
    'Wohin das Rad zeigt, ist nicht gesagt: nach oben ist angenommen.',
  'not stated': 'nicht angegeben',
  '{0} carries {1}, which usually needs {2}; the place is given as {3}. Ask the site before anything is brought there.':
    '{0} führt {1}, wofür meist {2} verlangt wird; der Ort ist angegeben mit {3}. Beim Betreiber fragen, bevor etwas dorthin gebracht wird.',
  '{0} carries {1}, which usually needs {2}; the place is given as {3} and {4}. Ask the site before anything is brought there.':
    '{0} führt {1}, wofür meist {2} verlangt wird; der Ort ist angegeben mit {3} und {4}. Beim Betreiber fragen, bevor etwas dorthin gebracht wird.',
  'group {0}': 'Gruppe {0}',
  'class {0}': 'Klasse {0}',
  'no group': 'keiner Gruppe',
  'no class': 'keiner Temperaturklasse',
  '{0}, {1}: {2}': '{0}, {1}: {2}',
  '{0} lies in zone {1}; {2} is not given, and the hardest one is assumed.':
    '{0} liegt in Zone {1}; {2} ist nicht angegeben, und die strengste ist angenommen.',
  'its gas group': 'die Gasgruppe',
  'its temperature class': 'die Temperaturklasse',
  '{0}: change and charge packs only outside zone {1}.': '{0}: Akkus nur außerhalb der Zone {1} wechseln und laden.',
  '{0} lies in zone {1}; {2} has a petrol engine.': '{0} liegt in Zone {1}; {2} hat einen Benzinmotor.',
  '{0} is enclosed; the exhaust of {1} would gather there.':
    '{0} liegt in einem engen Raum; das Abgas von {1} würde sich dort sammeln.',
  '{0} is in oxygen service; {1} brings fuel and oil near it.':
    '{0} führt Sauerstoff; {1} bringt Kraftstoff und Öl in die Nähe.',
  '{0} is in oxygen service: everything that touches the valve degreased and bagged, dry air only, no lubricator, no grease on the stem.':
    '{0} führt Sauerstoff: Alles, was die Armatur berührt, fettfrei und verpackt, nur trockene Luft, kein Öler, kein Fett an der Spindel.',
  '{0} is in {1} service: equipment disinfected, never used on sewage, no oil into the chamber.':
    '{0} führt {1}: Ausrüstung desinfiziert, nie an Abwasser benutzt, kein Öl in den Schacht.',
  '{0} is in {1} service: packing may leak when the stem turns; gas test, protection and cleaning after use as the place asks.':
    '{0} führt {1}: Die Packung kann undicht werden, wenn die Spindel dreht; Freimessen, Schutzausrüstung und Reinigung danach, wie der Ort es verlangt.',
  '{0} is enclosed: confined-space rules of the place, gas test and a person outside come before any equipment.':
    '{0} liegt in einem engen Raum: Die Regeln des Ortes für enge Räume, das Freimessen und ein Posten draußen kommen vor jeder Ausrüstung.',
  'The site allows {0}; {1} runs on {2}.': 'Der Ort erlaubt: {0}; {1} läuft mit: {2}.',
  'no power source': 'keine Energiequelle',
  '{0} allows {1} dB(A); {2} makes {3}.': '{0} erlaubt {1} dB(A); {2} macht {3}.',
  '{0} is locked or isolated by someone else: it is never moved. It is planned when whoever locked it has released it in writing.':
    '{0} ist von jemand anderem abgeschlossen oder freigeschaltet: Sie wird nie bewegt. Geplant wird sie, wenn schriftlich freigegeben ist, wer auch immer sie gesichert hat.',
  '{0} is said to be seized: it is not planned; the Desk talks to the customer about freeing or replacing it.':
    '{0} soll festsitzen: Sie wird nicht geplant; das Haus spricht mit Ihnen darüber, sie gangbar zu machen oder zu ersetzen.',

  'Unmarked equipment is refused in {0}, whatever drives it.':
    'Ungekennzeichnete Ausrüstung ist in {0} ausgeschlossen, gleich womit sie angetrieben wird.',
  'zone {0}': 'Zone {0}',
  'a mine with firedamp': 'einer Grube mit Schlagwettern',
  'Marked {0}; {1} asks for category {2}.': 'Gekennzeichnet {0}; {1} verlangt Kategorie {2}.',
  '{0} or better': '{0} oder besser',
  'Marked for air from {0} to {1} °C only; the place may have {2} to {3} °C.':
    'Nur für Luft von {0} bis {1} °C gekennzeichnet; am Ort können {2} bis {3} °C sein.',
  'Marked {0}; the place asks for {1}.': 'Gekennzeichnet {0}; der Ort verlangt {1}.',
  'without a temperature class': 'ohne Temperaturklasse',
  'dust group': 'Staubgruppe',
  'gas group': 'Gasgruppe',
  '{0}, taken because its {1} is not known': '{0}, angenommen, weil seine {1} nicht bekannt ist',
  '{0}, taken because its class is not known': '{0}, angenommen, weil seine Klasse nicht bekannt ist',

  '{0} takes {1} Wh at the valve, more than one pack of {2} gives, and packs are not changed in zone {3}.':
    '{0} braucht {1} Wh an der Armatur, mehr als ein Akku von {2} gibt, und in Zone {3} werden keine Akkus gewechselt.',
  '{0} needs {1}; the site {2}.': '{0} braucht {1}; der Ort {2}.',
  '{0} of free air': '{0} Luft im Ansaugzustand',
  'says nothing of air': 'sagt nichts von Druckluft',
  'gives {0}': 'gibt {0}',
  'The site gives up to {0}; {1} takes {2} at most: set and lock the regulator before the hose is joined. Torques here are for that pressure.':
    'Der Ort gibt bis {0}; {1} verträgt höchstens {2}: den Druckregler einstellen und sichern, bevor der Schlauch angeschlossen wird. Die Drehmomente hier gelten für diesen Druck.',
  'The site gives {0} and {1} takes up to {2}: on one compressor {3} of the {4} crews can run such a drive at a time.':
    'Der Ort gibt {0}, und {1} braucht bis {2}: An einem Kompressor können {3} der {4} Trupps gleichzeitig so einen Antrieb betreiben.',
  '{0}: voltage and plug of the charging place are not given; tell them before the kit is packed.':
    '{0}: Spannung und Stecker des Ladeplatzes sind nicht angegeben; bitte mitteilen, bevor der Satz gepackt wird.',
  'The site gives {0}; after its hose {1} would get less than the {2} it needs.':
    'Der Ort gibt {0}; hinter seinem Schlauch bekäme {1} weniger als die nötigen {2}.',

  '{0} mounts on {1} heads; {2} is {3}.': '{0} passt an: {1}; {2} ist: {3}.',
  '{0} with {1} stalls at up to {2}; {3} holds {4}.': '{0} mit {1} bleibt erst bei bis zu {2} stehen; {3} hält {4}.',
  'At an arm of {0} the pull reaches {1}; {2} holds {3}.': 'Bei einem Arm von {0} zieht es mit {1}; {2} hält {3}.',
  '{0}: side and least weight of the plate are not stated, so that nothing is known of what it holds.':
    '{0}: Seitenlänge und Mindestgewicht der Platte sind nicht angegeben, darum ist nicht bekannt, was sie hält.',
  '{0} with {1} can bring {2}; {3} under its least weight of {4} slips at {5}.':
    '{0} mit {1} kann {2} bringen; {3} rutscht unter dem Mindestgewicht von {4} bei {5}.',
  '{0} {1}; {2} holds one way and no second chain is with it.':
    '{0} {1}; {2} hält nur in einer Richtung, und keine zweite Kette ist dabei.',
  '{0}; {1} holds one way and no second chain is with it.':
    '{0}; {1} hält nur in einer Richtung, und keine zweite Kette ist dabei.',
  '{0} is stroked {1} times, both ways': '{0} wird {1}-mal durchgefahren, in beide Richtungen',
  '{0} is or may be stiff and is worked to and fro': '{0} ist oder kann schwergängig sein und wird hin und her bewegt',
  '{0} may close either way, which is found out by turning both ways':
    '{0} kann rechts- oder linksherum schließen, was durch Drehen in beide Richtungen gefunden wird',
  '{0}: the wheel {1} with its stem; {2} does not follow.': '{0}: Das Rad {1} mit seiner Spindel; {2} folgt nicht.',
  '{0}: the wheel {1} with its stem by {2}; {3} does not follow.':
    '{0}: Das Rad {1} mit seiner Spindel um {2}; {3} folgt nicht.',
  rises: 'steigt',
  'may rise': 'steigt vielleicht',
  '{0}: {1} pulls with up to {2} sideways on a slender chain: a twin-point arm, yoke clamp or stand is better; steady the head by hand-free means.':
    '{0}: {1} zieht mit bis zu {2} seitlich an einer schlanken Kette: Ein Zweipunktarm, eine Bügelklemme oder ein Standgestell ist besser; den Kopf nicht mit den Händen, sondern mit Mitteln abstützen.',
  '{0}: {1} at an arm of {2} pulls with up to {3}, shock included; no drive is held by hand alone.':
    '{0}: {1} zieht an einem Arm von {2} mit bis zu {3}, Stoß eingeschlossen; kein Antrieb wird nur mit der Hand gehalten.',
  'Head {0} is right-angled: the drive itself is twisted by up to {1} about its own axis; both hands on the handles, feet firm.':
    'Kopf {0} ist ein Winkelkopf: Der Antrieb selbst wird mit bis zu {1} um seine eigene Achse verdreht; beide Hände an die Griffe, fester Stand.',

  '{0}: {1} needs {2}; the anchor there is “{3}”.': '{0}: {1} braucht {2}; der Haltepunkt dort ist „{3}“.',
  '{0}: {1} needs {2}, and the list does not say that one is there: assumed, to be looked at before the visit.':
    '{0}: {1} braucht {2}, und die Liste sagt nicht, ob so etwas da ist: angenommen, vor dem Besuch anzusehen.',
  '{0}: “{1}” must not take the reaction; small pipe, handrails, trays, ladders and scaffold are no anchors.':
    '{0}: „{1}“ darf das Gegendrehmoment nicht aufnehmen; kleine Rohre, Geländer, Kabelpritschen, Leitern und Gerüste sind keine Haltepunkte.',
  'The site allows {0}; {1} needs {2}.': 'Der Ort erlaubt: {0}; {1} braucht {2}.',
  'no anchors': 'keine Haltepunkte',
  '{0} as anchors': '{0} als Haltepunkt',
  '{0}: {1} clamps a yoke, and nothing says that this valve has one (a rising stem has).':
    '{0}: {1} klemmt an einen Bügel, und nichts sagt, dass diese Armatur einen hat (eine steigende Spindel hat einen).',
  'a vehicle comes within {0}': 'Ein Fahrzeug kommt bis auf {0} heran',
  'no vehicle comes near': 'Kein Fahrzeug kommt in die Nähe',
  '{0}: {1}; {2} needs one within {3}.': '{0}: {1}; {2} braucht eines in höchstens {3} Abstand.',
  '{0}: vehicle within {1}, brake on, wheels chocked, nobody between vehicle and valve.':
    '{0}: Fahrzeug in höchstens {1} Abstand, Bremse angezogen, Räder verkeilt, niemand zwischen Fahrzeug und Armatur.',
  '{0} stands on “{1}”; {2} must not be used there.': '{0} steht auf „{1}“; {2} darf dort nicht benutzt werden.',
  '{0}: {1} holds only on level firm ground with {2} or more on it all the time; nobody steps off while the drive runs.':
    '{0}: {1} hält nur auf ebenem, festem Boden mit ständig mindestens {2} darauf; niemand steigt ab, während der Antrieb läuft.',
  '{0} has a wheel; {1} stands over a valve key.': '{0} hat ein Rad; {1} steht über einem Bedienschlüssel.',
  '{0}: nobody says what the ground is; firm and level ground is assumed for {1}.':
    '{0}: Niemand sagt, wie der Boden ist; für {1} ist fester, ebener Boden angenommen.',
  '{0}: no stock restraint fits; {1} is made to order: workshop enquiry, with photos and measures of the place, before a date is promised.':
    '{0}: Keine Drehmomentstütze vom Lager passt; {1} wird auf Bestellung gebaut: Anfrage an die Werkstatt mit Fotos und Maßen des Ortes, bevor ein Tag zugesagt wird.',
};
