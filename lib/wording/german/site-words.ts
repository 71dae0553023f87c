/*
 * The site sheet in German: method, cautions at the valve, settings, restraints, what is written down.
 * Invariant: every step and caution says the same as its English one; a ceiling stays a ceiling.
 * Not here: findings (rule-, place-, duty-sentences.ts), crew days (crew-day-sentences.ts).
 * Read next: ../told-in.ts.
 */
export const SITE_WORDS: Readonly<Record<string, string>> = {
  Work: 'Arbeit',
  '{0} class of equal valves': '{0} Klasse gleicher Armaturen',
  '{0} classes of equal valves': '{0} Klassen gleicher Armaturen',
  'Start low, raise the limiter in steps, never past the ceiling.':
    'Niedrig anfangen, den Begrenzer in Stufen erhöhen, nie über die Obergrenze.',
  'Figures are estimates until measured.': 'Zahlen sind Schätzungen, bis gemessen wird.',
  'Before anything else': 'Vor allem anderen',
  'At every valve': 'An jeder Armatur',
  'Agree with whoever owns the valve that it may be moved, which way and how far; check locks, tags and permits.':
    'Mit dem Betreiber der Armatur klären, dass sie bewegt werden darf, in welche Richtung und wie weit; Schlösser, Schilder und Erlaubnisse prüfen.',
  'Look: wheel or nut sound, stem straight and clean, packing dry, nothing in the way of the stem or the arm.':
    'Ansehen: Rad oder Mutter heil, Spindel gerade und sauber, Packung trocken, nichts im Weg von Spindel oder Arm.',
  'Open the by-pass first where there is one.': 'Zuerst die Umführung öffnen, wo es eine gibt.',
  'Equalise; where heat or trapped pressure may bind the valve, vent or warm it, do not force it.':
    'Druck ausgleichen; wo Wärme oder eingeschlossener Druck die Armatur klemmen kann, entlüften oder anwärmen, nicht mit Gewalt drehen.',
  'Try by hand, both ways, within a person’s force.':
    'Von Hand versuchen, in beide Richtungen, mit der Kraft eines Menschen.',
  'Note the position found.': 'Die vorgefundene Stellung aufschreiben.',
  'Fit adapter, head, restraint and drive in this order; take up the slack of the restraint before power.':
    'Adapter, Kopf, Drehmomentstütze und Antrieb in dieser Reihenfolge ansetzen; die Stütze spielfrei anlegen, bevor der Antrieb läuft.',
  'Set the limiter to its start value for the direction; set the counter to zero at the closed end where it can be reached.':
    'Den Begrenzer auf seinen Anfangswert für die Richtung stellen; den Zähler in der geschlossenen Stellung auf null stellen, wo sie erreichbar ist.',
  'Run with short pulls first.': 'Zuerst in kurzen Zügen fahren.',
  'Stiff valve: to and fro, a little farther each time.': 'Schwergängige Armatur: hin und her, jedes Mal etwas weiter.',
  'Stop under power short of both ends; make the last turns by hand.':
    'Den Antrieb vor beiden Enden anhalten; die letzten Umdrehungen von Hand machen.',
  'Never back-seat under power.': 'Nie mit dem Antrieb in den Rücksitz fahren.',
  'Write down position as left, turns, highest limiter setting used and every defect.':
    'Hinterlassene Stellung, Umdrehungen, höchste benutzte Begrenzerstellung und jeden Mangel aufschreiben.',
  'Restore locks and tags.': 'Schlösser und Schilder wieder anbringen.',
  'While the drive turns': 'Während der Antrieb dreht',
  'Start low, raise the limiter step by step, never past the ceiling.':
    'Niedrig anfangen, den Begrenzer Stufe für Stufe erhöhen, nie über die Obergrenze.',
  'After a stall release the lever slowly and reverse to relieve the wind-up before touching the chain.':
    'Nach einem Stillstand den Schalter langsam loslassen und zurückdrehen, bis nichts mehr spannt, bevor jemand die Kette berührt.',
  'Keep hands, clothing and other people out of the turning parts and out of the line of the stem.':
    'Hände, Kleidung und andere Menschen von drehenden Teilen und aus der Richtung der Spindel fernhalten.',
  'Old and corroded is weaker than any table: if something bends, cracks or squeals, stop and report.':
    'Alt und korrodiert ist schwächer als jede Tabelle: Wenn sich etwas verbiegt, reißt oder quietscht, aufhören und melden.',
  'The unseating setting is never used to close.': 'Mit der Einstellung zum Losbrechen wird nie geschlossen.',
  'This place': 'Dieser Ort',
  'Good to know of all these valves': 'Gut zu wissen zu allen diesen Armaturen',
  'Order of work': 'Reihenfolge der Arbeit',
  'No crew yet': 'Noch kein Trupp',
  Tag: 'Kennzeichen',
  Where: 'Wo',
  Valve: 'Armatur',
  Class: 'Klasse',
  Done: 'Fertig',
  'Class {0} of {1}: {2}': 'Klasse {0} von {1}: {2}',
  'Class {0} of {1}: {2}: work and record': 'Klasse {0} von {1}: {2}: Arbeit und Bericht',
  '{0}: {1}.': '{0}: {1}.',
  'Crew {0}.': 'Trupp {0}.',

  'Limiter: start, step, ceiling': 'Begrenzer: Anfang, Stufe, Obergrenze',
  Direction: 'Richtung',
  'Part of the stroke': 'Teil des Hubs',
  'Start at': 'Anfang bei',
  Step: 'Stufe',
  Ceiling: 'Obergrenze',
  'At the valve, start to ceiling': 'An der Armatur, Anfang bis Obergrenze',
  'no limiter in this assembly': 'kein Begrenzer in dieser Kette',
  '▲ Each ceiling is below what the valve may need to start: it may not move at the torque allowed. Agree with the owner before the work; do not go higher.':
    '▲ Jede Obergrenze liegt unter dem, was die Armatur zum Losbrechen brauchen kann: Vielleicht bewegt sie sich beim erlaubten Drehmoment nicht. Vor der Arbeit mit dem Betreiber vereinbaren; nicht höher gehen.',
  '▲ A ceiling marked ▲ is below what the valve may need to start: it may not move at the torque allowed. Agree with the owner before the work; do not go higher.':
    '▲ Eine mit ▲ bezeichnete Obergrenze liegt unter dem, was die Armatur zum Losbrechen brauchen kann: Vielleicht bewegt sie sich beim erlaubten Drehmoment nicht. Vor der Arbeit mit dem Betreiber vereinbaren; nicht höher gehen.',
  'Time to open': 'Zeit zum Öffnen',
  'Time to close': 'Zeit zum Schließen',
  'To close, the wheel turns': 'Zum Schließen dreht das Rad',
  'To open, select on the drive': 'Zum Öffnen am Antrieb wählen',
  'To close, select on the drive': 'Zum Schließen am Antrieb wählen',
  '{0}, seen facing the {1}': '{0}, mit Blick auf: {1}',
  'not known: try gently by hand': 'nicht bekannt: behutsam von Hand versuchen',
  'try gently first: direction unknown': 'zuerst behutsam versuchen: Richtung unbekannt',
  'Chance that it moves at the first visit': 'Aussicht, dass sie sich beim ersten Besuch bewegt',
  '{0}: an estimate from ranges, no promise': '{0}: eine Schätzung aus Bereichen, keine Zusage',
  'about {0} %': 'etwa {0} %',
  'more than 99 %': 'mehr als 99 %',
  'less than 1 %': 'weniger als 1 %',
  'not known': 'nicht bekannt',
  'Strokes a visit': 'Hübe je Besuch',
  'Never faster than': 'Nie schneller als',
  'Turns counter': 'Umdrehungszähler',
  'required: zero it at the closed end': 'Pflicht: in geschlossener Stellung auf null stellen',
  'not required': 'nicht Pflicht',
  'Cautions for these valves': 'Vorsicht bei diesen Armaturen',
  'Good to know': 'Gut zu wissen',
  'The list leaves a range open: try {0}.': 'Die Liste lässt einen Bereich offen: versuchen mit {0}.',
  '{0}, then {1}': '{0}, dann {1}',
  'As found': 'Vorgefunden',
  Turns: 'Umdr.',
  'Highest torque': 'Höchstes Drehmoment',
  'As left': 'Hinterlassen',
  Defects: 'Mängel',
  'Who, when': 'Wer, wann',
  'Taken as driven by a {0}: {1}.': 'Als bedient angenommen an: {0}; {1}.',
  'the list gives a wheel': 'die Liste nennt ein Rad',
  'the list gives a nut': 'die Liste nennt eine Mutter',
  'the list gives a spindle': 'die Liste nennt eine Einbaugarnitur',
  'the valve is buried and geared': 'die Armatur ist erdverlegt und hat ein Getriebe',
  'geared valves above ground have a wheel': 'Armaturen mit Getriebe über Flur haben ein Rad',
  'hydrants and stop taps are turned on a key': 'Hydranten und Absperrhähne werden mit einem Schlüssel gedreht',
  'the valve is buried or not visible': 'die Armatur ist erdverlegt oder nicht sichtbar',
  'penstocks above water have a wheel or pillar': 'Schütze über Wasser haben ein Rad oder eine Säule',
  'waterworks valves are usually turned on a key': 'Armaturen im Wasserwerk werden meist mit einem Schlüssel gedreht',
  'valves of this kind usually have a handwheel': 'Armaturen dieser Art haben meist ein Handrad',

  'Never to a small pipe, handrail, cable tray or scaffold.':
    'Nie an kleines Rohr, Geländer, Kabelpritsche oder Gerüst.',
  'Chain square to the arm, short and without slack, to structure that may take the pull; it holds one way only, so change it over (or fit a second chain) before reversing.':
    'Kette rechtwinklig zum Arm, kurz und ohne Durchhang, an ein Bauteil, das den Zug aufnehmen darf; sie hält nur in einer Richtung, darum vor dem Umkehren umhängen (oder eine zweite Kette anbringen).',
  'Strap square to the arm, flat, protected at edges and without slack; it holds one way only, so change it over before reversing.':
    'Gurt rechtwinklig zum Arm, flach, an Kanten geschützt und ohne Durchhang; er hält nur in einer Richtung, darum vor dem Umkehren umhängen.',
  'Clamp the bar to structure that may take the push and the pull; it holds both ways.':
    'Die Stange an ein Bauteil klemmen, das Druck und Zug aufnehmen darf; sie hält in beide Richtungen.',
  'Both ends bear on anchors of equal stiffness, so that no side load comes on the stem.':
    'Beide Enden liegen an gleich steifen Haltepunkten an, damit keine Seitenkraft auf die Spindel kommt.',
  'Clamp evenly on both legs of the yoke, clear of gland and position marks; it takes the reaction inside the valve, so look for cracks in the yoke first.':
    'Gleichmäßig an beide Schenkel des Bügels klemmen, frei von Stopfbuchse und Stellungsmarken; das Gegendrehmoment bleibt in der Armatur, darum den Bügel zuerst auf Risse ansehen.',
  'Hitch to the vehicle: engine off, brake on, wheels chocked both ways, nobody between vehicle and valve.':
    'Ans Fahrzeug kuppeln: Motor aus, Bremse angezogen, Räder in beide Richtungen verkeilt, niemand zwischen Fahrzeug und Armatur.',
  'On firm level ground with the weight on it that is named on the plate; never on grating, slope, ice or a chamber roof.':
    'Auf festem, ebenem Boden mit dem Gewicht darauf, das auf der Platte steht; nie auf Gitterrost, Gefälle, Eis oder einer Schachtdecke.',
  'Both feet on firm ground, legs spread fully and pinned; check again after the first pulse.':
    'Beide Füße auf festem Boden, Beine ganz gespreizt und gesichert; nach dem ersten Anzug noch einmal prüfen.',
  'Stand beside the surface box, never on its frame or lid; guard the street as the traffic rules ask.':
    'Neben die Straßenkappe stellen, nie auf ihren Rahmen oder Deckel; die Straße absichern, wie die Verkehrsregeln es verlangen.',
  'Fit as on its own drawing from the workshop; not to be changed on site.':
    'Nach der Zeichnung der Werkstatt ansetzen; vor Ort nicht ändern.',
  'Restraint {0}: set up as its own instruction says.':
    'Drehmomentstütze {0}: nach ihrer eigenen Anleitung aufstellen.',
  'No powered drive is held by hand alone.': 'Kein Antrieb wird nur mit der Hand gehalten.',
  'It takes up to {0} at the anchor and is rated {1}.': 'Sie nimmt am Haltepunkt bis {0} auf und ist für {1} bemessen.',
  'Restraint {0}, {1}.': 'Drehmomentstütze {0}, {1}.',
};
