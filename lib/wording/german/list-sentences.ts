/*
 * What is said of a customer's list in German: rows that are no valves, cells that cannot be read, files that cannot be opened, each with what to do.
 * Invariant: a wording for every problem of lib/intake with its remedy.
 * Not here: the names of columns, which stay as the list has them.
 * Read next: ../told-in.ts, ../../intake/intake-problem.ts.
 */
export const LIST_SENTENCES: Readonly<Record<string, string>> = {
  'Size {0} has no unit; it makes sense in {1} only and is read as {2}.':
    'Größe {0} hat keine Einheit; sie ergibt nur in {1} Sinn und ist als {2} gelesen.',
  'Write the unit after the number.': 'Die Einheit hinter die Zahl schreiben.',
  'No valve is made in size {0}; {1} is taken.': 'In der Größe {0} wird keine Armatur gebaut; {1} ist angenommen.',
  'Read the size cast on the body.': 'Die am Gehäuse angegossene Größe ablesen.',
  'Size {0} is an outside diameter of pipe; the valve in it is usually {1}, at most {2}.':
    'Größe {0} ist ein Rohraußendurchmesser; die Armatur darin ist meist {1}, höchstens {2}.',
  'Size {0} names two sizes, as for a reducing tee; {1} to {2} is planned for, {3} as the likelier.':
    'Größe {0} nennt zwei Größen, wie bei einem Reduzier-T-Stück; geplant ist {1} bis {2}, {3} als die wahrscheinlichere.',
  'Say which of the two is the valve’s.': 'Sagen, welche der beiden die der Armatur ist.',
  'The comma in {0} may part thousands or decimals; it is read as {1}.':
    'Das Komma in {0} kann Tausender oder Dezimalstellen trennen; gelesen ist {1}.',
  'Write the number without a thousands mark.': 'Die Zahl ohne Tausendertrennzeichen schreiben.',
  'Write the number without a thousands mark, with a point for decimals.':
    'Die Zahl ohne Tausendertrennzeichen und mit Punkt vor den Dezimalstellen schreiben.',
  'The remark {0} names a tee or reducer {1}; the size column says {2}, which is its {3} side.':
    'Die Bemerkung {0} nennt ein T-Stück oder Reduzierstück {1}; die Größenspalte sagt {2}, das ist die Seite: {3}.',
  larger: 'größere',
  smaller: 'kleinere',
  'Check on site which side the valve is on.': 'Vor Ort prüfen, auf welcher Seite die Armatur sitzt.',
  'The size column says {0}, the remark {1} says {2}; the column is taken.':
    'Die Größenspalte sagt {0}, die Bemerkung {1} sagt {2}; die Spalte gilt.',
  'Ask, or read the size cast on the body.': 'Fragen oder die am Gehäuse angegossene Größe ablesen.',
  'No size is given; the pipe’s, {0}, is taken from {1}.':
    'Keine Größe ist angegeben; die des Rohrs, {0}, ist übernommen aus {1}.',
  'No size is given and the remark {0} names two, as for a reducing tee; {1} to {2} is planned for, the smaller as the likelier.':
    'Keine Größe ist angegeben, und die Bemerkung {0} nennt zwei, wie bei einem Reduzier-T-Stück; geplant ist {1} bis {2}, die kleinere als die wahrscheinlichere.',
  'The type column says {0}, the remark {1} says {2}; the column is taken.':
    'Die Artspalte sagt {0}, die Bemerkung {1} sagt {2}; die Spalte gilt.',
  'The type column says {0}, the remark {1} says {2}; it is kept as a line valve.':
    'Die Artspalte sagt {0}, die Bemerkung {1} sagt {2}; sie bleibt als Leitungsarmatur.',
  'The type column says {0}, the remark {1} speaks of an ordinary valve; the column is taken.':
    'Die Artspalte sagt {0}, die Bemerkung {1} spricht von einer gewöhnlichen Armatur; die Spalte gilt.',
  'Ask, or look at the valve.': 'Fragen oder die Armatur ansehen.',
  'Ask; take the line out if it is one that works by itself.':
    'Fragen; die Position herausnehmen, wenn es eine ist, die von selbst arbeitet.',
  'Valve type {0} is not turned through a stroke.': 'Die Armaturenart {0} wird nicht über einen Hub gedreht.',
  'Valve type {0} is no kind of valve that is known here; it is taken as not known.':
    'Die Armaturenart {0} ist hier nicht bekannt; sie gilt als nicht bekannt.',
  'Write the kind, for example gate, globe, butterfly, penstock or plug.':
    'Die Art schreiben, zum Beispiel gate (Schieber), globe (Ventil), butterfly (Klappe), penstock (Schütz) oder plug (Kükenhahn).',
  'Stem thread {0} has {1} start, the column says {2}; both are shown and the turns are not sure.':
    'Spindelgewinde {0} hat {1} Gang, die Spalte sagt {2}; beides ist gezeigt, und die Umdrehungen sind nicht sicher.',
  'Stem thread {0} has {1} starts, the column says {2}; both are shown and the turns are not sure.':
    'Spindelgewinde {0} hat {1} Gänge, die Spalte sagt {2}; beides ist gezeigt, und die Umdrehungen sind nicht sicher.',
  'Count the thread ends at the end of the stem.': 'Die Gewindeanfänge am Ende der Spindel zählen.',
  'Stem thread {0} is left-handed, the column says right; the column is taken and the direction is to be tried slowly.':
    'Spindelgewinde {0} ist linksgängig, die Spalte sagt rechts; die Spalte gilt, und die Richtung ist langsam zu versuchen.',
  'Look at the slope of the thread.': 'Die Neigung des Gewindes ansehen.',
  'Stem thread {0} gives a lead that is no multiple of its pitch; the pitch is kept and the lead left out.':
    'Spindelgewinde {0} nennt eine Steigung, die kein Vielfaches der Teilung ist; die Teilung bleibt, die Steigung entfällt.',
  'Measure ten threads and count the starts.': 'Zehn Gewindegänge messen und die Gangzahl zählen.',
  '{0} is none of: {1}. It is taken as not known.': '{0} ist keines von: {1!}. Es gilt als nicht bekannt.',
  'Write one of: {0}; or leave it empty.': 'Eines davon schreiben: {0!}; oder leer lassen.',
  '{0} cannot be read; it is taken as not known.': '{0} ist nicht lesbar; es gilt als nicht bekannt.',
  'Write it like {0}, or leave it empty.': 'So schreiben: {0!}; oder leer lassen.',
  'Write it like {0} (usual: {1}), or leave it empty.': 'So schreiben: {0!} (üblich: {1}); oder leer lassen.',
  '{0} is outside what is plausible ({1}); it is taken as not known.':
    '{0} liegt außerhalb des Glaubhaften ({1}); es gilt als nicht bekannt.',
  '{0} is outside what is usual ({1}); it is kept as it stands.':
    '{0} liegt außerhalb des Üblichen ({1}); es bleibt, wie es dasteht.',
  'Check the number and its unit.': 'Zahl und Einheit prüfen.',
  '{0} has no unit; it makes sense in {1} and is read so.':
    '{0} hat keine Einheit; es ergibt in {1} Sinn und ist so gelesen.',
  inches: 'Zoll',
  'a whole number from {0} to {1}': 'eine ganze Zahl von {0} bis {1}',
  '{0} to {1} years, or a year from 1850 on': '{0} bis {1} Jahre oder ein Jahr ab 1850',
  'The remark says {0}; the valve is kept as a line.': 'Die Bemerkung sagt {0}; die Armatur bleibt als Position.',
  'Ask whether it is to be turned at all.': 'Fragen, ob sie überhaupt gedreht werden soll.',
  'The remark says {0}, which may be several valves; one is taken.':
    'Die Bemerkung sagt {0}, das können mehrere Armaturen sein; eine ist angenommen.',
  'Write the number in the quantity column.': 'Die Zahl in die Mengenspalte schreiben.',
  'Nut size {0} has no unit; it makes sense in inches and is read so.':
    'Schlüsselweite {0} hat keine Einheit; sie ergibt in Zoll Sinn und ist so gelesen.',
  'Rating {0} can mean two ratings; the lower is taken: {1}.':
    'Druckstufe {0} kann zwei Stufen meinen; die niedrigere gilt: {1}.',
  'Write the one that is cast on the body.': 'Die am Gehäuse angegossene schreiben.',
  'Rating {0} is no standard class; it is kept as {1}.': 'Druckstufe {0} ist keine genormte Stufe; sie bleibt als {1}.',
  'Check what is cast on the body.': 'Prüfen, was am Gehäuse angegossen ist.',
  'An air valve works by itself; nothing on it is turned through a stroke.':
    'Ein Be- und Entlüftungsventil arbeitet von selbst; nichts daran wird über einen Hub gedreht.',
  'A non-return valve works by itself; nothing on it is turned through a stroke.':
    'Eine Rückschlagarmatur arbeitet von selbst; nichts daran wird über einen Hub gedreht.',
  'It works by itself; nothing on it is turned through a stroke.':
    'Sie arbeitet von selbst; nichts daran wird über einen Hub gedreht.',
  'A meter or instrument is not a valve.': 'Ein Zähler oder Messgerät ist keine Armatur zum Drehen.',
  'A pump is not a valve.': 'Eine Pumpe ist keine Armatur.',
  'A strainer is not a valve.': 'Ein Schmutzfänger wird nicht gedreht.',
  'A pipe fitting has nothing to turn.': 'Ein Formstück hat nichts zu drehen.',
  'A pipe is not a valve.': 'Ein Rohr ist keine Armatur.',
  'It is a structure, not a valve.': 'Das ist ein Bauwerk, keine Armatur.',
  'The row is a total ({0}), not a valve.': 'Die Zeile ist eine Summe ({0}), keine Armatur.',
  'The row has text but nothing that speaks of a valve: no tag, no size, no type.':
    'Die Zeile hat Text, aber nichts, was von einer Armatur spricht: kein Kennzeichen, keine Größe, keine Art.',
  'The row holds {0} alone and looks like a heading, not a valve.':
    'Die Zeile enthält nur {0} und sieht wie eine Überschrift aus, nicht wie eine Armatur.',
  'The remark {0} speaks of a {1}, and no kind or size of valve is given.':
    'Die Bemerkung {0} spricht von: {1}; Art oder Größe einer Armatur sind nicht angegeben.',
  'Two columns give {0}: {1}; the first is taken.': 'Zwei Spalten nennen {0}: {1}; die erste gilt.',
  'Say which column holds, or correct the row.': 'Sagen, welche Spalte gilt, oder die Zeile berichtigen.',
  'The cell holds {0} characters; the first {1} are kept.': 'Die Zelle enthält {0} Zeichen; die ersten {1} bleiben.',
  'Shorten the text; the file itself is kept as it came.': 'Den Text kürzen; die Datei selbst bleibt, wie sie kam.',
  'The row repeats the headers or gives their units; it is not a valve.':
    'Die Zeile wiederholt die Überschriften oder nennt ihre Einheiten; sie ist keine Armatur.',
  'Correct the valve type to take the row in as a line.':
    'Die Armaturenart berichtigen, um die Zeile als Position aufzunehmen.',
  'If it is a valve, add it as a line by hand.': 'Wenn es eine Armatur ist, von Hand als Position hinzufügen.',
  'The row has no tag; it goes by “{0}”.': 'Die Zeile hat kein Kennzeichen; sie heißt „{0}“.',
  'row {0}': 'Zeile {0}',
  'Write the name that stands on the valve.': 'Den Namen schreiben, der an der Armatur steht.',
  'The tag {0} is used in row {1} and in row {2}; both stay lines, this one as “{3}”.':
    'Das Kennzeichen {0} steht in Zeile {1} und in Zeile {2}; beide bleiben Positionen, diese als „{3}“.',
  'Give each valve its own tag, or take one of the rows out.':
    'Jeder Armatur ein eigenes Kennzeichen geben oder eine der Zeilen herausnehmen.',
  'Row {0} says the same as row {1}, place included; both stay lines.':
    'Zeile {0} sagt dasselbe wie Zeile {1}, der Ort eingeschlossen; beide bleiben Positionen.',
  'Ask whether it is one valve listed twice.': 'Fragen, ob eine Armatur zweimal aufgeführt ist.',
  'Row {0} stands above the headers and is not read: {1}.':
    'Zeile {0} steht über den Überschriften und wird nicht gelesen: {1}.',
  'Nothing, unless the headers were found in the wrong row.':
    'Nichts, es sei denn, die Überschriften wurden in der falschen Zeile gefunden.',
  'No column holds tags; each line goes by its row.':
    'Keine Spalte enthält Kennzeichen; jede Position heißt nach ihrer Zeile.',
  'Say which column names the valves, if there is one.':
    'Sagen, welche Spalte die Armaturen benennt, wenn es eine gibt.',
  'The sizes in {0} have no unit and make sense in inches only; the whole column is read so.':
    'Die Größen in {0} haben keine Einheit und ergeben nur in Zoll Sinn; die ganze Spalte ist so gelesen.',
  'Write the unit in the header, for example “Size (in)”.':
    'Die Einheit in die Überschrift schreiben, zum Beispiel „Size (in)“.',

  'The file is not a text that can be read as a list. Save the list as CSV (UTF-8) or XLSX and upload that.':
    'Die Datei ist kein Text, der als Liste lesbar ist. Die Liste als CSV (UTF-8) oder XLSX speichern und hochladen.',
  'The list has {0} rows; at most {1} are taken at once. Split it into several lists.':
    'Die Liste hat {0} Zeilen; höchstens {1} werden auf einmal angenommen. In mehrere Listen teilen.',
  'There is nothing in the file but empty cells. Check that it was saved before it was uploaded.':
    'In der Datei sind nur leere Zellen. Prüfen, ob sie vor dem Hochladen gespeichert wurde.',
  'The archive is protected by a password. Take the password off, save it, and upload that.':
    'Das Archiv ist mit einem Kennwort geschützt. Das Kennwort entfernen, speichern und hochladen.',
  'The file is a binary workbook (.xlsb), which is not read.':
    'Die Datei ist eine binäre Arbeitsmappe (.xlsb), die nicht gelesen wird.',
  'The file is an OpenDocument file, which is not read.':
    'Die Datei ist eine OpenDocument-Datei, die nicht gelesen wird.',
  'The file is a text document with layout, not a list. Copy the table into a spreadsheet.':
    'Die Datei ist ein gestaltetes Textdokument, keine Liste. Die Tabelle in eine Tabellenkalkulation kopieren.',
  'The file is an archive without a workbook in it. Unpack it and upload the list itself.':
    'Die Datei ist ein Archiv ohne Arbeitsmappe. Entpacken und die Liste selbst hochladen.',
  'The list has {0} columns; at most {1} are read. Copy the columns that matter into a new sheet.':
    'Die Liste hat {0} Spalten; höchstens {1} werden gelesen. Die wichtigen Spalten in ein neues Blatt kopieren.',
  'Save it as XLSX or CSV and upload that.': 'Als XLSX oder CSV speichern und hochladen.',
  'Open it in a spreadsheet program and save it as XLSX or CSV, then upload that.':
    'In einem Tabellenprogramm öffnen, als XLSX oder CSV speichern und hochladen.',
  'The file is empty. Check that it was saved before it was uploaded.':
    'Die Datei ist leer. Prüfen, ob sie vor dem Hochladen gespeichert wurde.',
  'The file is {0} MB; at most {1} MB are read. Take pictures and other sheets out, or split the list.':
    'Die Datei hat {0} MB; höchstens {1} MB werden gelesen. Bilder und andere Blätter herausnehmen oder die Liste teilen.',
  'The file is {0}, not a list.': 'Die Datei ist {0}, keine Liste.',
  'a PDF document': 'ein PDF-Dokument',
  'a compressed archive': 'ein gepacktes Archiv',
  'a picture': 'ein Bild',
  'a text document with layout': 'ein gestaltetes Textdokument',
  'The workbook is protected by a password. Take the password off in a spreadsheet program, save it, and upload that.':
    'Die Arbeitsmappe ist mit einem Kennwort geschützt. Das Kennwort in einem Tabellenprogramm entfernen, speichern und hochladen.',
  'The file is a workbook of the old kind (.xls), which is not read.':
    'Die Datei ist eine Arbeitsmappe der alten Art (.xls), die nicht gelesen wird.',
  'The file is a web page, whatever its name says.': 'Die Datei ist eine Webseite, was immer ihr Name sagt.',
  'The file is a workbook saved as XML, which is not read.':
    'Die Datei ist eine als XML gespeicherte Arbeitsmappe, die nicht gelesen wird.',
  'The file is XML, not a list.': 'Die Datei ist XML, keine Liste.',
  'The workbook would unpack to {0}, which is more than is opened ({1} MB). Copy the list alone into a new workbook, or save it as CSV.':
    'Die Arbeitsmappe ergäbe entpackt {0}, mehr als geöffnet wird ({1} MB). Nur die Liste in eine neue Mappe kopieren oder als CSV speichern.',
  'The workbook is damaged or cut short. Open it in a spreadsheet program, save it again as XLSX or CSV, and upload that.':
    'Die Arbeitsmappe ist beschädigt oder abgeschnitten. In einem Tabellenprogramm öffnen, erneut als XLSX oder CSV speichern und hochladen.',

  '{0}: {1}. {2}': '{0}: {1}. {2}',
  'air valve': 'Be- und Entlüftungsventil',
  'non-return valve': 'Rückschlagarmatur',
  'self-acting valve': 'selbsttätige Armatur',
  'meter or instrument': 'Zähler oder Messgerät',
  pump: 'Pumpe',
  strainer: 'Schmutzfänger',
  'pipe fitting': 'Formstück',
  pipe: 'Rohr',

  'Driven by': 'Bedient an',
  'Wheel spokes': 'Speichen',
  'Wheel material': 'Radwerkstoff',
  'Stem protrusion': 'Überstand der Spindel',
  'Protrusion measured at': 'Überstand gemessen bei',
  'Stem cover': 'Spindelabdeckung',
  'Nut size': 'Schlüsselweite',
  'Nut shape': 'Form der Mutter',
  'Nut wear': 'Abnutzung der Mutter',
  'Spindle size': 'Maß der Einbaugarnitur',
  'Spindle length': 'Länge der Einbaugarnitur',
  'Depth to nut': 'Tiefe bis zur Mutter',
  Misalignment: 'Fluchtabweichung',
  Surface: 'Oberfläche',
  Faces: 'Zeigt nach',
  Reach: 'Reichweite',
  'Clear radius': 'Platz ringsum',
  Headroom: 'Platz darüber',
  'Standing place': 'Standplatz',
  'Vehicle distance': 'Abstand Fahrzeug',
  Enclosed: 'Enger Raum',
  Service: 'Medium (Einsatz)',
  'Noise limit': 'Lärmgrenze',
  Notes: 'Bemerkung',
  Photo: 'Foto',
  'Stem thread': 'Spindelgewinde',
  'Thread starts': 'Gangzahl',
  'Thread hand': 'Gangrichtung',
  'Stem diameter': 'Spindeldurchmesser',
  'Stem material': 'Spindelwerkstoff',
  'Thread friction': 'Gewindereibung',
  'Collar friction': 'Bundreibung',
  'Collar diameter': 'Bunddurchmesser',
  'Collar bearing': 'Bundlagerung',
  'Stem thrust': 'Axialkraft der Spindel',
  'Packing load': 'Packungskraft',
  'Seat bore': 'Sitzdurchmesser',
  Travel: 'Hubweg',
  'Valve factor': 'Reibfaktor der Armatur',
  'Starting torque': 'Losbrechmoment',
  'Running torque': 'Laufmoment',
  'Highest torque allowed': 'Höchstes zulässiges Drehmoment',
  Gearbox: 'Getriebe',
  'Gear ratio': 'Übersetzung',
  'Gear efficiency': 'Wirkungsgrad des Getriebes',
  'Output torque': 'Abtriebsmoment',
  'End stops': 'Endanschläge',
  'Mounting flange': 'Anbauflansch',
  Closes: 'Schließt',
  Location: 'Ort der Armatur',
  'Working order': 'Reihenfolge',
  'Access time': 'Zugangszeit',
  Quantity: 'Menge',
  'Valve type': 'Armaturenart',
  Action: 'Wirkrichtung',
  Size: 'Größe',
  Rating: 'Druckstufe',
  'Line pressure': 'Leitungsdruck',
  'Differential pressure': 'Differenzdruck',
  Flowing: 'Durchfluss',
  Medium: 'Medium',
  Temperature: 'Temperatur',
  Age: 'Alter',
  'Last operated': 'Zuletzt bewegt',
  'Position now': 'Stellung jetzt',
  'Normal position': 'Betriebsstellung',
  'Leave at': 'Endstellung',
  'By-pass': 'Umführung',
  Locked: 'Abgeschlossen',
  'Pipe length': 'Leitungslänge',
  'Flow velocity': 'Fließgeschwindigkeit',
};
