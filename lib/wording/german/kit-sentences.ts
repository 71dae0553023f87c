/*
 * Why nothing fits, and what would change it, in German.
 * Invariant: a repair names the same number and the same authority as in English.
 * Not here: finding them (lib/kits).
 * Read next: ../told-in.ts.
 */
export const KIT_SENTENCES: Readonly<Record<string, string>> = {
  '({0} more is refused for the same reason)': '({0} weiteres Teil ist aus demselben Grund ausgeschlossen)',
  '({0} more are refused for the same reason)': '({0} weitere sind aus demselben Grund ausgeschlossen)',
  'It can be served if {0}.': 'Sie lässt sich bedienen, wenn Folgendes gilt: {0}.',
  'It can be served if two things hold: {0}.': 'Sie lässt sich bedienen, wenn zweierlei gilt: {0}.',
  '{0}, and {1}': '{0}, und {1}',
  'It can be served with {0} of {1}.': 'Sie lässt sich bedienen mit {0} von {1}.',
  'there is {0} of {1}': 'es gibt {0} von {1}',
  'a clear radius': 'Platz ringsum',
  'clear radius': 'Platz ringsum',
  headroom: 'Platz darüber',
  'a headroom': 'Platz darüber',
  'a vehicle may stand within {0} of the valve': 'ein Fahrzeug darf in höchstens {0} Abstand von der Armatur stehen',
  'a structure to take the reaction stands near and may be used':
    'ein Bauteil, das das Gegendrehmoment aufnimmt, ist in der Nähe und darf benutzt werden',
  'It can be served when it is not held to that part.':
    'Sie lässt sich bedienen, wenn sie nicht an dieses Teil gebunden ist.',
  'it is not held to that part': 'sie ist nicht an dieses Teil gebunden',
  'It can be served when the parts left out ({0}) may be used again.':
    'Sie lässt sich bedienen, wenn die weggelassenen Teile ({0}) wieder benutzt werden dürfen.',
  'Find out whether the stem rises through the wheel: where it does not, it can be served.':
    'Herausfinden, ob die Spindel durch das Rad steigt: Wo nicht, lässt sie sich bedienen.',
  'the stem does not rise through the wheel': 'die Spindel steigt nicht durch das Rad',
  'Find out whether the wheel rises with its stem: where it does not, it can be served.':
    'Herausfinden, ob das Rad mit der Spindel steigt: Wo nicht, lässt sie sich bedienen.',
  'the wheel does not rise with its stem': 'das Rad steigt nicht mit der Spindel',
  'Measure the wheel: {0} is too wide a range; at about {1} it can be served.':
    'Das Rad messen: {0} ist ein zu weiter Bereich; bei etwa {1} lässt sie sich bedienen.',
  'the wheel measures {0}': 'das Rad misst {0}',
  'Count the spokes: {0} is too wide a range; with {1} it can be served.':
    'Die Speichen zählen: {0} ist ein zu weiter Bereich; mit {1} lässt sie sich bedienen.',
  'the wheel has {0} spokes': 'das Rad hat {0} Speichen',
  'Measure the nut: several sizes are possible; at {0} across flats it can be served.':
    'Die Mutter messen: Mehrere Größen sind möglich; bei {0} Schlüsselweite lässt sie sich bedienen.',
  'the nut measures {0} across flats': 'die Mutter hat {0} Schlüsselweite',
  'Measure the depth to the nut: at about {0} it can be served.':
    'Die Tiefe bis zur Mutter messen: Bei etwa {0} lässt sie sich bedienen.',
  'the nut lies {0} deep': 'die Mutter liegt {0} tief',
  'the site allows {0}': 'der Ort erlaubt {0}',
  'the site allows {0} and gives {1} of it': 'der Ort erlaubt {0} und gibt davon {1}',
  'It can be served without the house rule “{0}”': 'Sie lässt sich bedienen ohne die Hausregel „{0}“',
  'the house rule “{0}” is set aside': 'die Hausregel „{0}“ ist aufgehoben',
  'It can be served with compressed air of {0} at the valve.':
    'Sie lässt sich bedienen mit Druckluft von {0} an der Armatur.',
  'It can be served with compressed air of {0} at the valve, of which the site says nothing.':
    'Sie lässt sich bedienen mit Druckluft von {0} an der Armatur, wovon der Ort nichts sagt.',
  'compressed air of {0} is at the valve': 'Druckluft von {0} ist an der Armatur',
  'It can be served if the valve may see {0} (known now: {1}), on its maker’s word.':
    'Sie lässt sich bedienen, wenn die Armatur {0} bekommen darf (bekannt jetzt: {1}), nach Aussage ihres Herstellers.',
  'the valve may see {0} on its maker’s word': 'die Armatur darf nach Aussage ihres Herstellers {0} bekommen',
  'It can be served at a torque of at most {0} (planned: {1}).':
    'Sie lässt sich bedienen bei einem Drehmoment von höchstens {0} (geplant: {1}).',
  'the torque is at most {0}': 'das Drehmoment ist höchstens {0}',
  'It can be served if it may be turned at {0} 1/min (allowed now: {1}).':
    'Sie lässt sich bedienen, wenn mit {0} 1/min gedreht werden darf (erlaubt jetzt: {1}).',
  'it may be turned at {0} 1/min': 'es darf mit {0} 1/min gedreht werden',
  '{0} is held to {1} by a pin or lock; nothing else is looked at.':
    '{0} ist durch eine Festlegung an {1} gebunden; anderes wird nicht betrachtet.',
};
