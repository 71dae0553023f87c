/*
 * What is said of a valve's duty in German: findings of a line, measurements to make first, doubtful values, visits.
 * Invariant: a wording for every finding of lib/duty; the same numbers and the same deference.
 * Not here: the steps of the calculation sheet, which stays English.
 * Read next: ../told-in.ts.
 */
export const DUTY_SENTENCES: Readonly<Record<string, string>> = {
  'The valve is said to be seized: it goes to the Desk, who agree with the owner what may be risked; it is not planned as a valve that turns.':
    'Die Armatur soll festsitzen: Sie geht an das Haus, das mit dem Betreiber klärt, was gewagt werden darf; als drehbar wird sie nicht geplant.',
  'Which way the valve closes is not given and is never taken as clockwise: try gently by hand first and write down what the wheel or nut does.':
    'In welcher Drehrichtung die Armatur schließt, ist nicht angegeben, und Rechtsschluss wird nie vorausgesetzt: zuerst behutsam von Hand versuchen und aufschreiben, was Rad oder Mutter tut.',
  'The valve is {0} years old: old and corroded parts are weaker than any table, so the bounds are lowered to {1} to 100 %. A stated highest torque may no longer hold either.':
    'Die Armatur ist {0} Jahre alt: Alte und korrodierte Teile sind schwächer als jede Tabelle, darum sind die Grenzen auf {1} bis 100 % gesenkt. Auch ein angegebenes Höchstdrehmoment gilt vielleicht nicht mehr.',
  'The valve is stiff: corrosion that makes it stiff also makes it weaker than any table. Start low, work to and fro, raise in steps.':
    'Die Armatur ist schwergängig: Korrosion, die sie schwergängig macht, macht sie auch schwächer als jede Tabelle. Niedrig anfangen, hin und her bewegen, in Stufen erhöhen.',
  'The kind of valve is not given and is taken as a gate valve in {0}: a quarter-turn valve would need quite another drive. Ask.':
    'Die Armaturenart ist nicht angegeben und als Schieber angenommen ({0}): Eine Armatur mit Vierteldrehung bräuchte einen ganz anderen Antrieb. Bitte nachfragen.',
  'a plant': 'Anlage',
  waterworks: 'Wasserwerk',
  'The size is not given: the ranges cover the usual sizes and are too wide to rely on. Ask for the nominal size first.':
    'Die Nennweite ist nicht angegeben: Die Bereiche umfassen die üblichen Größen und sind zu weit, um sich darauf zu verlassen. Zuerst nach der Nennweite fragen.',
  'A wedge that was closed hot can be clamped by its cooling body. Warm it, do not force it: no torque in these figures allows for it.':
    'Ein heiß geschlossener Keil kann im abkühlenden Gehäuse klemmen. Anwärmen, nicht mit Gewalt drehen: Kein Drehmoment in diesen Zahlen rechnet das ein.',
  'Pressure shut in between the discs or in the bonnet can lock this kind of valve. Vent or equalise it, do not force it: no torque in these figures allows for it.':
    'Zwischen den Platten oder in der Haube eingeschlossener Druck kann diese Armatur blockieren. Entlüften oder den Druck ausgleichen, nicht mit Gewalt drehen: Kein Drehmoment in diesen Zahlen rechnet das ein.',
  'This kind of valve shuts by position: stop by count, never by torque.':
    'Diese Armatur schließt nach Stellung: nach Zählung anhalten, nie nach Drehmoment.',
  'Wedges between the two discs spread them in the last part of the closing stroke: the torque rises there. Stop short by count and bring the last turns home by hand; pull them loose by hand before opening under power.':
    'Keile zwischen den beiden Platten spreizen sie im letzten Teil des Schließhubs: Dort steigt das Drehmoment. Nach Zählung vorher anhalten und die letzten Umdrehungen von Hand machen; vor dem Öffnen mit Antrieb von Hand lösen.',
  'The end stops of the gearbox are not to be met under power: stop short by count and finish by hand.':
    'Die Endanschläge des Getriebes dürfen nicht mit Antrieb angefahren werden: nach Zählung vorher anhalten und von Hand beenden.',
  'A travelling-nut gearbox has no constant ratio: turns are a wide range unless they are stated, and the torque changes along the stroke.':
    'Ein Getriebe mit Wandermutter hat keine feste Übersetzung: Die Umdrehungen sind ein weiter Bereich, wenn sie nicht angegeben sind, und das Drehmoment ändert sich über den Hub.',
  'A gearbox is taken to be there, but neither its kind nor its ratio is given for certain: read its nameplate.':
    'Ein Getriebe ist angenommen, aber weder Art noch Übersetzung sind sicher angegeben: das Typenschild ablesen.',
  'The flange bounds what may pass; it says nothing of what the valve needs, nor of its end stops.':
    'Der Flansch begrenzt, was hindurchgehen darf; er sagt nichts darüber, was die Armatur braucht, und nichts von ihren Endanschlägen.',
  'A quarter-turn valve without a gearbox shuts in a quarter of a turn: a powered drive is far too fast for it. Turn it by hand or fit a gearbox.':
    'Eine Armatur mit Vierteldrehung ohne Getriebe schließt in einer Vierteldrehung: Ein Antrieb ist dafür viel zu schnell. Von Hand drehen oder ein Getriebe anbauen.',
  'The differential pressure given ({0}) is above the line pressure given ({1}); both are used as they stand. Check them.':
    'Der angegebene Differenzdruck ({0}) liegt über dem angegebenen Leitungsdruck ({1}); beide sind so benutzt, wie sie dastehen. Bitte prüfen.',
  'The thread is not self-locking: the load can turn the stem back. Never take the drive off under load.':
    'Das Gewinde ist nicht selbsthemmend: Die Last kann die Spindel zurückdrehen. Den Antrieb nie unter Last abnehmen.',
  'Whether the thread holds itself depends on its friction: treat it as one that can turn back, and do not take the drive off under load.':
    'Ob das Gewinde selbst hält, hängt von seiner Reibung ab: wie eines behandeln, das zurückdrehen kann, und den Antrieb nicht unter Last abnehmen.',
  'When closing, the weight of the door may pull the stem (thrust down to {0}): lower it under control.':
    'Beim Schließen kann das Gewicht der Tafel an der Spindel ziehen (Axialkraft bis {0}): kontrolliert absenken.',
  'Is this valve really turned by hand? At its wheel of about {0} it would take {1}, {2} times what a wheel should ask of a person ({3}). Check size, pressure and gearbox.':
    'Wird diese Armatur wirklich von Hand gedreht? An ihrem Rad von etwa {0} wären {1} nötig, das {2}-Fache dessen, was ein Rad einem Menschen abverlangen soll ({3}). Nennweite, Druck und Getriebe prüfen.',
  'starting takes {0}, the valve must never see more than {1} ({2})':
    'zum Losbrechen sind {0} nötig, und die Armatur darf nie mehr als {1} bekommen ({2})',
  'It cannot be moved safely when {0}: {1}.': 'Beim {0} lässt sie sich nicht sicher bewegen: {1}.',
  'It may not move at the torque allowed when {0}: {1}; to be agreed before hire.':
    'Beim {0} bewegt sie sich beim erlaubten Drehmoment vielleicht nicht: {1}; vor der Miete zu vereinbaren.',
  'The {0} given is {1}, the calculation gives {2}; the one given is used. Check which is right.':
    'Angegeben ({0}): {1}; die Rechnung ergibt {2}; benutzt wird die Angabe. Prüfen, was stimmt.',
  'By travel and thread a stroke takes {0} turns, by the waterworks rule of three to the inch {1}: the thread is taken. Check the number of starts and the travel, and count the turns from the closed end.':
    'Nach Hub und Gewinde braucht ein Hub {0} Umdrehungen, nach der Wasserwerksregel von drei je Zoll {1}: Das Gewinde gilt. Gangzahl und Hub prüfen und die Umdrehungen von der geschlossenen Stellung aus zählen.',

  'By {0} the valve might bear no more than {1}, which is guessed, yet it is said to take {2}: what is said counts, and {3} is taken as borne. Ask for the highest torque that is allowed.':
    'Nach „{0}“ hielte die Armatur vielleicht nicht mehr als {1} aus, was geschätzt ist, doch soll sie {2} brauchen: Das Gesagte gilt, und {3} sind als ertragen angenommen. Nach dem höchsten zulässigen Drehmoment fragen.',
  'A pillar: its wheel or crank is taken; say whether the crank comes off and what square is under it.':
    'Eine Säule: Ihr Rad oder ihre Kurbel ist angenommen; sagen, ob die Kurbel abgeht und welcher Vierkant darunter ist.',
  'A chain wheel is pulled from below; nothing can sit on it. Take the chain off and say what is behind the wheel.':
    'An einem Kettenrad wird von unten gezogen; nichts kann darauf sitzen. Die Kette abnehmen und sagen, was hinter dem Rad ist.',
  'The hand drive belongs to another actuator: isolate and lock that actuator first, then follow its maker’s limits for its hand drive.':
    'Der Handantrieb gehört zu einem Stellantrieb: diesen zuerst freischalten und sichern, dann die Grenzen seines Herstellers für den Handantrieb einhalten.',

  'Gas group': 'Gasgruppe',
  'Temperature class': 'Temperaturklasse',
  Zone: 'Zone',
  '{0} cannot be read; {1}.': '{0} ist nicht lesbar; {1}.',
  'until then nothing electrical or moving is passed for it':
    'bis dahin wird nichts Elektrisches oder Bewegtes dafür zugelassen',
  'IIC or IIIC, the hardest, is taken': 'angenommen ist IIC oder IIIC, die strengste',
  'T6 (85 °C), the hardest, is taken': 'angenommen ist T6 (85 °C), die strengste',
  'It is said for the whole site.': 'Das gilt für den ganzen Ort.',
  'Write 0, 1, 2 (gas), 20, 21, 22 (dust), mine (firedamp), or none.':
    'Bitte 0, 1, 2 (Gas), 20, 21, 22 (Staub), mine (Schlagwetter) oder none schreiben.',
  'Write IIA, IIB, IIB+H2, IIC (gas), IIIA, IIIB, IIIC (dust), or I (firedamp).':
    'Bitte IIA, IIB, IIB+H2, IIC (Gas), IIIA, IIIB, IIIC (Staub) oder I (Schlagwetter) schreiben.',
  'Write T1 to T6, or the highest surface temperature such as T85 °C.':
    'Bitte T1 bis T6 schreiben oder die höchste Oberflächentemperatur, etwa T85 °C.',
  '{0} is North American (class, division or group by NEC Articles 500 to 506) and is not turned into a zone or group here, as Division 1 takes in zone 0 and the letters mean other gases; {1}.':
    '{0} ist nordamerikanisch (Class, Division oder Group nach NEC Article 500 bis 506) und wird hier nicht in Zone oder Gruppe übersetzt, weil Division 1 die Zone 0 einschließt und die Buchstaben andere Gase meinen; {1}.',

  'Ask the maker or the owner for the highest torque that the valve may see.':
    'Beim Hersteller oder Betreiber nach dem höchsten Drehmoment fragen, das die Armatur bekommen darf.',
  'Ask what kind of valve it is: gate, globe, butterfly or another.':
    'Nach der Armaturenart fragen: Schieber, Ventil, Absperrklappe oder eine andere.',
  'Ask for the nominal size: it is cast on the body.': 'Nach der Nennweite fragen: Sie ist am Gehäuse angegossen.',
  'Read the pressure on both sides of the valve: the difference drives the torque.':
    'Den Druck auf beiden Seiten der Armatur ablesen: Der Unterschied bestimmt das Drehmoment.',
  'Measure the stem’s diameter and the lead of its thread (travel in one turn).':
    'Spindeldurchmesser und Gewindesteigung (Weg je Umdrehung) messen.',
  'Ask when it was last moved and whether it turns freely.':
    'Fragen, wann sie zuletzt bewegt wurde und ob sie leicht dreht.',
  'Count the turns of a full stroke.': 'Die Umdrehungen eines ganzen Hubs zählen.',
  'Read the gearbox’s nameplate: kind, ratio and efficiency.':
    'Das Typenschild des Getriebes ablesen: Art, Übersetzung und Wirkungsgrad.',
  'Ask the valve’s maker for its shaft torque.': 'Beim Hersteller der Armatur nach dem Drehmoment an der Welle fragen.',
  'The kind that is taken narrows {0}: another kind may lie outside.':
    'Die angenommene Armaturenart engt ein: {0}; eine andere kann außerhalb liegen.',
  'If it reads as is likely, it narrows {0}.': 'Liegt der Messwert, wie er wahrscheinlich ist, wird enger: {0}.',
  '{0} from {1} to {2}': '{0} von {1} auf {2}',
  'the torque to start {0}': 'das Losbrechmoment ({0})',
  'the torque to start {0} from {1} to {2}': 'das Losbrechmoment ({0}) von {1} auf {2}',
  'the torque it must never see': 'das Drehmoment, das sie nie bekommen darf',
  'the turns': 'die Umdrehungen',
  'Measure this first: {0}': 'Zuerst messen: {0}',
  'Measure this first: {0} {1}': 'Zuerst messen: {0} {1}',

  '{0} cannot be meant: plausible is a whole number from {1} to {2}.':
    '{0} kann nicht gemeint sein: glaubhaft ist eine ganze Zahl von {1} bis {2}.',
  '{0} cannot be meant: plausible is 0 to {1} years, or a year from {2} to now.':
    '{0} kann nicht gemeint sein: glaubhaft sind 0 bis {1} Jahre oder ein Jahr von {2} bis heute.',
  'It is set aside; check it.': 'Die Angabe ist beiseitegelegt; bitte prüfen.',
  '{0} cannot be meant: plausible is {1}. It is set aside and the usual values stand in; check the number and its unit.':
    '{0} kann nicht gemeint sein: glaubhaft ist {1}. Die Angabe ist beiseitegelegt, und die üblichen Werte gelten; Zahl und Einheit prüfen.',
  '{0} is outside what is usual ({1}): is it meant so? It is kept as it stands; check the number and its unit.':
    '{0} liegt außerhalb des Üblichen ({1}): Ist das so gemeint? Die Angabe bleibt, wie sie dasteht; Zahl und Einheit prüfen.',
  'Stem thread {0} cannot be meant: plausible is a diameter of 6 to 400 mm, a pitch of 1 mm to half the diameter, and 1 to 8 starts whose lead is below the diameter. It is set aside and the usual threads stand in; measure ten threads and count the starts.':
    'Spindelgewinde {0} kann nicht gemeint sein: glaubhaft sind ein Durchmesser von 6 bis 400 mm, eine Teilung von 1 mm bis zum halben Durchmesser und 1 bis 8 Gänge, deren Steigung unter dem Durchmesser liegt. Die Angabe ist beiseitegelegt, und die üblichen Gewinde gelten; zehn Gewindegänge messen und die Gangzahl zählen.',
  'The side of the disc that the pressure comes from is not given: both are covered, the heavier is taken as likely.':
    'Von welcher Seite des Tellers der Druck kommt, ist nicht angegeben: Beide sind abgedeckt, die schwerere gilt als wahrscheinlich.',
  '{0}: closing {1}.': '{0}: Schließen {1}.',
  'Close slowly, the last part of the stroke slowest; {0} turns a minute at most.':
    'Langsam schließen, den letzten Teil des Hubs am langsamsten; höchstens {0} Umdrehungen je Minute.',
  'Water is flowing': 'Wasser fließt',
  'Whether water flows is not given, so it is taken to flow':
    'Ob Wasser fließt, ist nicht angegeben, darum gilt es als fließend',
  'quickly may raise the pressure by {0}': 'in kurzer Zeit kann den Druck erhöhen um {0}',
  'at the speed allowed may raise the pressure by about {0}':
    'mit der erlaubten Drehzahl kann den Druck erhöhen um etwa {0}',
  'The thread {0} has {1} starts but the column says {2}; {3} is used. Count the thread ends on the stem.':
    'Das Gewinde {0} hat {1} Gänge, die Spalte sagt aber {2}; benutzt wird {3}. Die Gewindeanfänge an der Spindel zählen.',
  'the column': 'die Spalte',
  'the designation': 'die Bezeichnung',
  'Stem thread {0}: a pitch of {1} mm is unlikely on {2} mm; usual is {3} to {4} mm. Is it meant so? It is kept as it stands; measure ten threads.':
    'Spindelgewinde {0}: Eine Teilung von {1} mm ist auf {2} mm unwahrscheinlich; üblich sind {3} bis {4} mm. Ist das so gemeint? Die Angabe bleibt; zehn Gewindegänge messen.',
  'Stem thread {0} with {1} starts leads {2} mm a turn, which is unlikely on {3} mm; usual is up to {4} mm. Is it meant so? It is kept as it stands; count the starts.':
    'Spindelgewinde {0} mit {1} Gängen steigt {2} mm je Umdrehung, was auf {3} mm unwahrscheinlich ist; üblich sind bis {4} mm. Ist das so gemeint? Die Angabe bleibt; die Gänge zählen.',
  'Last operated {0} and age {1} contradict each other: a valve was last moved after it was put in, so plausible is {2}. Both are kept as they stand; ask which is right.':
    'Zuletzt bewegt ({0}) und Alter ({1}) widersprechen sich: Eine Armatur wurde nach ihrem Einbau zuletzt bewegt, glaubhaft ist also {2}. Beide Angaben bleiben; nachfragen, was stimmt.',
  '{0} or later': '{0} oder später',
  '0 to {0} years': '0 bis {0} Jahre',
  '{0} is unlikely {1}: usual is {2} to {3}. Is it meant so? {4}; check {5}.':
    '{0} ist unwahrscheinlich {1}: üblich sind {2} bis {3}. Ist das so gemeint? {4}; zu prüfen: {5}.',
  'It is kept, and the figures cover what is usual as well':
    'Die Angabe bleibt, und die Zahlen decken auch das Übliche ab',
  'It is kept as it stands': 'Die Angabe bleibt, wie sie dasteht',
  "The list gives {0} to {1}, an earlier visit {2}: both are covered. Find out which holds, then correct the list or set the visit's record aside.":
    'Die Liste gibt {0} bis {1} an, ein früherer Besuch {2}: Beide sind abgedeckt. Klären, was gilt, dann die Liste berichtigen oder den Bericht des Besuchs beiseitelegen.',
};
