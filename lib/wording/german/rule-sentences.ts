/*
 * What the rules on stem, wheel, nut, buried valves, reach, torque and shafts say, in German.
 * Invariant: a wording for every sentence of lib/rules that can be said; a test reads the rules' own text to hold it.
 * Not here: when a rule speaks (lib/rules), rules on place, restraint and people (place-sentences.ts).
 * Read next: ../told-in.ts.
 */
export const RULE_SENTENCES: Readonly<Record<string, string>> = {
  '{0}: the nut lies {1} deep; {2} with its extensions reaches {3}, and {4} is needed.':
    '{0}: Die Mutter liegt {1} tief; {2} reicht mit Verlängerungen {3} weit, und nötig sind {4}.',
  '{0}: the nut lies {1} deep; {2} is {3} at its shortest and would hold the head {4} above the surface.':
    '{0}: Die Mutter liegt {1} tief; {2} ist zusammengeschoben {3} lang und hielte den Kopf {4} über dem Boden.',
  '{0}: the key is over {1} long (nut {2} deep): guide it in the surface box, turn slowly, and stand clear of the key, which stores wind-up.':
    '{0}: Der Bedienschlüssel ist länger als {1} (Mutter {2} tief): in der Straßenkappe führen, langsam drehen und Abstand vom Schlüssel halten, denn er speichert Verdrehung.',
  '{0} stands {1}° out of line: a universal joint is needed above {2}°.':
    '{0} steht {1}° aus der Flucht: Über {2}° ist ein Kreuzgelenk nötig.',
  '{0} stands {1}° out of line; {2} works up to {3}°.': '{0} steht {1}° aus der Flucht; {2} arbeitet bis {3}°.',
  '{0}: through the joint at {1}° torque and speed peak {2} % above their mean, twice a turn; limiter and highest torque are reckoned with the peak.':
    '{0}: Durch das Gelenk bei {1}° liegen Drehmoment und Drehzahl zweimal je Umdrehung bis {2} % über ihrem Mittel; Begrenzer und höchstes Drehmoment sind mit dieser Spitze gerechnet.',
  '{0}: both joints of {1} take the same angle, forks of the middle piece in one plane; a quarter turn out of phase the speed would peak {2} % above its mean. It is reckoned as one joint at the whole angle.':
    '{0}: Beide Gelenke von {1} nehmen denselben Winkel auf, die Gabeln des Mittelstücks stehen in einer Ebene; um eine Vierteldrehung versetzt läge die Drehzahl bis {2} % über ihrem Mittel. Gerechnet ist es wie ein Gelenk mit dem ganzen Winkel.',
  '{0} is not said to stand out of line: {1} would only add speed ripple and a joint that can whip.':
    'Dass {0} aus der Flucht steht, ist nicht gesagt: {1} brächte nur ungleichförmige Drehung und ein Gelenk, das schlagen kann.',
  '{0}: the surface box is “{1}”: find, open and clear it before the visit, or the visit is lost.':
    '{0}: Die Straßenkappe ist „{1}“: vor dem Besuch suchen, öffnen und räumen, sonst ist der Besuch umsonst.',
  '{0}: the depth to the nut is a guess ({1} to {2}); the key covers it. Measure it with a rod.':
    '{0}: Die Tiefe bis zur Mutter ist geschätzt ({1} bis {2}); der Schlüssel deckt sie ab. Mit einer Stange messen.',

  '{0} takes {1} turns or has an end that must not be hit under power: a turns counter is required.':
    '{0} braucht {1} Umdrehungen oder hat einen Anschlag, der nicht mit Kraft angefahren werden darf: Ein Umdrehungszähler ist Pflicht.',
  '{0} may take {1} turns; {2} counts to {3}.': '{0} kann {1} Umdrehungen brauchen; {2} zählt bis {3}.',
  '{0}: turns are a guess, {1} to {2}; expect the end anywhere in between.':
    '{0}: Die Umdrehungen sind geschätzt, {1} bis {2}; mit dem Ende ist überall dazwischen zu rechnen.',
  '{0} turns {1}; {2} takes {3}: they do not join.': '{0} dreht {1}; {2} nimmt {3} auf: Sie passen nicht zusammen.',

  '{0}: count turns from the closed end and write them down each way.':
    '{0}: Umdrehungen von der geschlossenen Stellung aus zählen und für beide Richtungen aufschreiben.',
  '{0}: stop the drive short of both ends and do the last turns by hand.':
    '{0}: Den Antrieb vor beiden Enden anhalten und die letzten Umdrehungen von Hand machen.',
  '{0}: do not drive it against its back seat; open to the end by hand and turn back a little.':
    '{0}: Nicht mit dem Antrieb gegen den Rücksitz fahren; das letzte Stück von Hand öffnen und etwas zurückdrehen.',
  '{0} closes by position: stop at the mark or stop and do not torque it; the stop of a gearbox is not a seat.':
    '{0} schließt nach Stellung: an Marke oder Anschlag anhalten und nicht mit Drehmoment nachziehen; der Anschlag eines Getriebes ist kein Sitz.',
  '{0} lies in an enclosed place: the air is tested before anyone enters and while they work, and it is ventilated; no entry without the permit of the place and somebody outside.':
    '{0} liegt in einem engen Raum: Die Luft wird freigemessen, bevor jemand einsteigt und während gearbeitet wird, und der Raum wird belüftet; kein Einstieg ohne die Erlaubnis des Ortes und einen Posten draußen.',
  '{0} has a by-pass: equalise through it before the main valve is opened.':
    '{0} hat eine Umführung: darüber den Druck ausgleichen, bevor die Hauptarmatur geöffnet wird.',
  '{0} is or may be stiff: a few turns on, half back, and again; the time planned allows for it. Do not force it.':
    '{0} ist oder kann schwergängig sein: ein paar Umdrehungen vor, die Hälfte zurück, und wieder; die geplante Zeit reicht dafür. Nicht mit Gewalt drehen.',
  '{0}: try by hand first; nobody in line with the stem; start low, raise in steps; after a stall release slowly and reverse to relieve.':
    '{0}: Zuerst von Hand versuchen; niemand steht in Richtung der Spindel; niedrig anfangen, in Stufen erhöhen; nach einem Stillstand langsam loslassen und zum Entspannen zurückdrehen.',
  '{0}: leave it {1} and write down the position it was found in.':
    '{0}: In der Stellung „{1}“ hinterlassen und die vorgefundene Stellung aufschreiben.',
  '{0} is reverse-acting: the stem going in opens it. Check twice before a direction is selected.':
    '{0} wirkt umgekehrt: Die Spindel öffnet beim Hineinfahren. Zweimal prüfen, bevor eine Drehrichtung gewählt wird.',

  '{0}: a {1} across flats fits no socket of {2} ({3}).':
    '{0}: {1} Schlüsselweite passt in keinen Steckeinsatz von {2} ({3}).',
  '{0} of unknown size': '{0} unbekannter Größe',
  '{0}: the nut is rounded and {1} is only pushed on: it would jump off under torque.':
    '{0}: Die Mutter ist rund gedreht und {1} nur aufgesteckt: Unter Drehmoment spränge er ab.',
  '{0}: the nut is {1}: try sockets for the tightest one, seat it fully, go up in small steps.':
    '{0}: Die Mutter ist {1}: den engsten passenden Steckeinsatz nehmen, ganz aufsetzen, in kleinen Stufen erhöhen.',
  '{0}: the nut is not described fully ({1}): the kit carries what covers it; measure across the flats.':
    '{0}: Die Mutter ist nicht vollständig beschrieben ({1}): Der Satz enthält, was infrage kommt; die Schlüsselweite messen.',
  'shape unknown': 'Form unbekannt',
  'size unknown': 'Größe unbekannt',
  '{0} is worked by a chain wheel: take the chain and its guide off from a safe platform before anything is clamped to the wheel.':
    '{0} wird über ein Kettenrad bedient: Kette und Führung von einem sicheren Standplatz aus abnehmen, bevor etwas ans Rad geklemmt wird.',
  '{0} is worked through a {1}: its pins, couplings and bearings are weaker than the valve; look at them first and go up in small steps.':
    '{0} wird bedient über: {1}. Dessen Stifte, Kupplungen und Lager sind schwächer als die Armatur; zuerst ansehen und in kleinen Stufen erhöhen.',
  '{0} has an actuator: isolate and lock off its supply, engage the hand drive as its maker says, and keep to the hand drive’s own torque.':
    '{0} hat einen Stellantrieb: dessen Energie freischalten und gegen Wiedereinschalten sichern, den Handantrieb nach Herstellerangabe einlegen und sich an das Drehmoment des Handantriebs halten.',

  '{0} carries {1}; {2} with {3} can bring {4}.': '{0} trägt {1}; {2} mit {3} kann {4} bringen.',
  'Head {0} carries {1}; {2} can bring {3} to its output.':
    'Kopf {0} trägt {1}; {2} kann {3} an seinen Abtrieb bringen.',

  '{0} is {1} away from where one can stand; extensions of {2} are needed and these give {3}.':
    '{0} ist {1} vom Standplatz entfernt; nötig sind {2} Verlängerung, und diese geben {3}.',
  '{0} is not made to be driven through an extension ({1}).':
    '{0} ist nicht dafür gemacht, über eine Verlängerung gedreht zu werden ({1}).',
  '{0} leaves {1} around it; {2} swings {3}.': '{0} lässt ringsum {1} Platz; {2} schwenkt {3} aus.',
  '{0} leaves {1} around it; {2} needs {3}.': '{0} lässt ringsum {1} Platz; {2} braucht {3}.',
  '{0} has {1} above it; {2} with {3} stands {4} high.': '{0} hat {1} Platz darüber; {2} mit {3} baut {4} hoch.',
  '{0} faces {1}; {2} would come off.': '{0} zeigt {1}; {2} fiele ab.',
  '{0} faces {1}; {2} is for {3}.': '{0} zeigt {1}; {2} ist für: {3}.',
  '{0} faces {1}: hang {2} with {3} ({4}) from a sling or balancer; the stem must not carry it.':
    '{0} zeigt {1}: {2} mit {3} ({4}) an Schlinge oder Balancer hängen; die Spindel darf das Gewicht nicht tragen.',
  '{0} would turn at {1} 1/min, faster than {2}.': '{0} drehte mit {1} 1/min, schneller als: {2}.',
  '{0} allows ({1})': '{0} ({1}) zulässt',
  '{0}: the reach of up to {1} is a guess; measure it.': '{0}: Die Reichweite bis {1} ist geschätzt; bitte messen.',

  '{0} would turn {1} at {2} 1/min; drawn out to {3} it is kept to {4}, half of where it whirls.':
    '{0} drehte {1} mit {2} 1/min; auf {3} ausgezogen gilt {4}, die Hälfte der biegekritischen Drehzahl.',
  '{0}: at {1} winds up by {2}° and stores {3} J: it springs back when the drive stops. Release slowly, reverse to relieve, and stand clear of it.':
    '{0}: Verdrehung bei {1}: {2}°, gespeichert werden {3} J. Beim Anhalten des Antriebs federt das zurück. Langsam loslassen, zum Entspannen zurückdrehen und Abstand halten.',

  '{0} may be turned at {1} 1/min; {2} in gear “{3}” with {4} turns it at {5}.':
    '{0} darf mit {1} 1/min gedreht werden; {2} im Gang „{3}“ mit {4} dreht mit {5}.',
  '{0} must not be stroked in less than {1}; {2} in gear “{3}” with {4} would do it in {5}.':
    '{0} darf nicht schneller als in {1} durchgefahren werden; {2} im Gang „{3}“ mit {4} bräuchte {5}.',
  '{0}: the highest permitted speed may be as low as {1} 1/min and the chain can turn at {2}: keep the speed down until the maker’s figure is known.':
    '{0}: Die höchste zulässige Drehzahl kann bei nur {1} 1/min liegen, und die Kette kann mit {2} drehen: langsam fahren, bis die Angabe des Herstellers bekannt ist.',
  'Head {0} takes {1} 1/min at its input; {2} in gear “{3}” runs at {4}.':
    'Kopf {0} verträgt {1} 1/min am Eingang; {2} im Gang „{3}“ läuft mit {4}.',
  '{0}; {1} turns one way only.': '{0}; {1} dreht nur in eine Richtung.',
  '{0}: nobody says which way it closes. Try by hand, a quarter turn each way, before the drive goes on; never take clockwise for granted.':
    '{0}: Niemand sagt, in welcher Drehrichtung sie schließt. Vor dem Ansetzen des Antriebs von Hand versuchen, eine Vierteldrehung in jede Richtung; Rechtsschluss nie voraussetzen.',
  '{0}: the thread {1}: hold the wheel before the drive comes off, and never take the drive off under load.':
    '{0}: Das Gewinde {1}: das Rad festhalten, bevor der Antrieb abkommt, und den Antrieb nie unter Last abnehmen.',
  'does not lock itself': 'ist nicht selbsthemmend',
  'may not lock itself': 'ist vielleicht nicht selbsthemmend',
  '{0} takes {1} of running; {2} rests for {3} after each {4}. The time planned holds the rests.':
    '{0} braucht {1} Laufzeit; {2} ruht nach je {4} für {3}. Die geplante Zeit enthält die Pausen.',
  'The site has {0}; {1} works at {2}.': 'Am Ort herrschen {0}; {1} arbeitet bei {2}.',
  'The site lies at {0}; {1} works up to {2}.': 'Der Ort liegt auf {0} Höhe; {1} arbeitet bis {2}.',

  '{0}: the notes say that the stem is bent; a bent stem is not turned under power. Have it looked at first.':
    '{0}: Die Bemerkung sagt, dass die Spindel verbogen ist; eine verbogene Spindel wird nicht mit Antrieb gedreht. Zuerst ansehen lassen.',
  '{0}: the stem ({1}) stands up to {2} through the wheel; head {3} is {4} with {5}, and no tubular extension holds the stem.':
    '{0}: Die Spindel ({1}) steht bis {2} durch das Rad; Kopf {3} ist ein {4}, {5}, und keine Rohrverlängerung nimmt die Spindel auf.',
  'no through bore': 'ohne Durchgang',
  'a bore of {0}': 'mit Durchgang {0}',
  '{0} and takes {1} of stem': '{0} und nimmt {1} Spindel auf',
  '{0}: the stem ({1}) rises through the wheel and does not pass {2}.':
    '{0}: Die Spindel ({1}) steigt durch das Rad und geht nicht durch {2}.',
  '{0}: the stem rises through the wheel, and {1} leaves it no room.':
    '{0}: Die Spindel steigt durch das Rad, und {1} lässt ihr keinen Platz.',
  '{0}: the stem rises through the wheel and does not pass the option that sits under the head.':
    '{0}: Die Spindel steigt durch das Rad und geht nicht durch das Zubehör, das unter dem Kopf sitzt.',
  '{0}: take the stem cover or indicator off before the head goes on, and put it back after.':
    '{0}: Spindelabdeckung oder Stellungsanzeige vor dem Aufsetzen des Kopfes abnehmen und danach wieder anbringen.',
  '{0}: how far the stem stands through the wheel is not known; up to {1} is planned for. Measure it, and say whether the valve was open or closed.':
    '{0}: Wie weit die Spindel durch das Rad steht, ist nicht bekannt; geplant ist bis {1}. Messen und dazu sagen, ob die Armatur offen oder geschlossen war.',
  '{0}: nobody says whether the stem rises through the wheel; the equipment leaves room for it.':
    '{0}: Niemand sagt, ob die Spindel durch das Rad steigt; die Ausrüstung lässt Platz dafür.',

  '{0} needs at least {1} to move and must never see more than {2} ({3}): power would break it.':
    '{0} braucht mindestens {1} zum Losbrechen und darf nie mehr als {2} bekommen ({3}): Ein Antrieb würde sie zerstören.',
  '{0} may need {1} to move and must never see more than {2} ({3}): it may not move at the torque allowed. Agree before hire what happens then.':
    '{0} kann {1} zum Losbrechen brauchen und darf nie mehr als {2} bekommen ({3}): Vielleicht bewegt sie sich beim erlaubten Drehmoment nicht. Vor der Miete vereinbaren, was dann geschieht.',
  '{0} asks for {1}; {2} in gear “{3}” with {4} surely gives {5}.':
    '{0} verlangt {1}; {2} im Gang „{3}“ mit {4} gibt sicher {5}.',
  '{0} runs at about {1}; {2} in gear “{3}” with {4} may run at {5}.':
    '{0} läuft mit etwa {1}; {2} im Gang „{3}“ mit {4} darf dauernd {5} geben.',
  '{0} may need up to {1}; this chain surely gives {2}. Measuring the torque first tells whether that is enough.':
    '{0} kann bis {1} brauchen; diese Kette gibt sicher {2}. Zuerst das Drehmoment zu messen, zeigt, ob das reicht.',
  '{0} must never see more than {1}, and {2} with {3} stalls at up to {4}: a torque limiter is required.':
    '{0} darf nie mehr als {1} bekommen, und {2} mit {3} bleibt erst bei bis zu {4} stehen: Ein Drehmomentbegrenzer ist Pflicht.',
  '{0} must never see more than {1}; the lowest setting of {2} may bring {3} to it.':
    '{0} darf nie mehr als {1} bekommen; die niedrigste Einstellung von {2} kann {3} an sie bringen.',
  '{0} asks for {1}; {2} with {3} and limiter {4} surely gives {5}.':
    '{0} verlangt {1}; {2} mit {3} und Begrenzer {4} gibt sicher {5}.',
  '{0} needs a limit both ways; {1} limits one way only.':
    '{0} braucht eine Begrenzung in beiden Richtungen; {1} begrenzt nur in einer.',
  '{0} may need {1} to move {2}, with the margin {3}; at its ceiling {4} surely lets {5} through: it may not move at the torque allowed. Agree before hire what happens then.':
    '{0} kann beim Losbrechen in Richtung „{2}“ {1} brauchen, mit Zuschlag {3}; an seiner Obergrenze lässt {4} sicher {5} durch: Vielleicht bewegt sie sich beim erlaubten Drehmoment nicht. Vor der Miete vereinbaren, was dann geschieht.',
  'the limiter': 'Begrenzer',
  '{0}: until it has shown which way it closes, set {1} no higher than {2} on its scale, whichever way it is turned.':
    '{0}: Bis sich gezeigt hat, in welcher Richtung sie schließt, {1} für beide Drehrichtungen nicht über {2} seiner Skale stellen.',

  '{0}: there is nothing that an adapter can grip; the Desk looks at it.':
    '{0}: Da ist nichts, was ein Adapter greifen kann; das Haus sieht es sich an.',
  '{0}: there is nothing that an adapter can grip ({1}); the Desk looks at it.':
    '{0}: Da ist nichts, was ein Adapter greifen kann ({1}); das Haus sieht es sich an.',
  '{0} is turned by a {1}; {2} does not grip one.': '{0} wird gedreht an: {1}; {2} greift das nicht.',
  '{0}: a wheel of {1} is outside the {2} of {3}.': '{0}: Ein Rad von {1} liegt außerhalb von {2}, wofür {3} ist.',
  '{0}: a wheel with {1} spokes is outside the {2} of {3}.':
    '{0}: Ein Rad mit {1} Speichen liegt außerhalb von {2}, wofür {3} ist.',
  'an unknown number of': 'unbekannt vielen',
  '{0}: a rim dished by {1}° is more than the {2}° of {3}.':
    '{0}: Ein um {1}° gekröpftes Rad ist mehr als die {2}° von {3}.',
  '{0}: take the spinner or knob off the rim before the adapter goes on.':
    '{0}: Drehknauf oder Kurbelgriff vom Radkranz abnehmen, bevor der Adapter aufgesetzt wird.',
  '{0}: the wheel is cast iron and {1} pushes on single spokes: look for cracks, go up in the smallest steps.':
    '{0}: Das Rad ist aus Gusseisen, und {1} drückt auf einzelne Speichen: nach Rissen sehen, in kleinsten Stufen erhöhen.',
  '{0}: {1} is bolted to the wheel and stays on for all strokes of the visit; take it off before leaving.':
    '{0}: {1} wird ans Rad geschraubt und bleibt für alle Hübe des Besuchs daran; vor dem Weggehen abnehmen.',
};
