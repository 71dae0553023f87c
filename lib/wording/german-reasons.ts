/*
 * Why a valve or an order goes to the house, and what was refused, in German.
 * Invariant: the same keys and placeholders as english-reasons.ts.
 * Not here: when each holds (lib/questions/hand-over.ts, lib/services/self-service).
 * Read next: english-reasons.ts.
 */
import type { ENGLISH_REASONS } from './english-reasons.ts';

export const GERMAN_REASONS: Readonly<Record<keyof typeof ENGLISH_REASONS, string>> = {
  'reason.zone': 'Sie steht in der Ex-Zone {zone}: was dort benutzt werden darf, prüft ein Mensch.',
  'reason.zone-unknown': 'Noch hat niemand gesagt, ob dort Explosionsgefahr besteht, und das wird nie geraten.',
  'reason.locked': 'Jemand hat sie abgeschlossen oder beschildert. Was ein anderer gesichert hat, wird nicht gedreht.',
  'reason.seized': 'Sie bewegt sich gar nicht. Eine festsitzende Armatur wird erst angesehen, bevor man dafür mietet.',
  'reason.service': 'Für das, was darin fließt ({service}), wählt ein Mensch die Ausrüstung.',
  'reason.nothing-fits': 'Nichts, was das Haus vermietet, passt auf sie, so wie sie beschrieben ist.',
  'reason.made-to-fit': 'Sie braucht etwas eigens Angefertigtes: {part}.',
  'reason.never-exceed-guessed': 'Sie kann bis zu {high_nm} N·m brauchen, und was sie aushält, ist nur geschätzt.',
  'reason.window-empty':
    'Sie braucht wohl mehr Drehmoment (bis {high_nm} N·m), als man ihr geben darf ({ceiling_nm} N·m).',
  'reason.range-too-wide': 'Was sie braucht, ist zu ungewiss: {low_nm} bis {high_nm} N·m.',
  'reason.not-in-these-days': 'Nicht alles ist an diesen Tagen frei, oder die Tage reichen nicht.',
  'reason.value': 'Aufträge über {limit} ohne Steuer sieht ein Mensch an.',

  'refused.no-such-link': 'Dieser Link führt nirgendwohin. Den erhaltenen Link prüfen oder neu beginnen.',
  'refused.link-expired': 'Dieser Link ist abgelaufen. Beim Haus einen neuen erbitten oder neu beginnen.',
  'refused.link-withdrawn': 'Dieser Link wurde zurückgezogen. Beim Haus einen neuen erbitten.',
  'refused.link-only-looks': 'Dieser Link ist nur zum Ansehen.',
  'refused.too-many-tries': 'Das wurde zu oft gefragt. Eine Viertelstunde warten, dann noch einmal versuchen.',
  'refused.busy': 'Gerade fragen viele. Eine Minute warten und die Seite neu laden.',
  'refused.order-with-desk': 'Das Haus bearbeitet diesen Auftrag; Änderungen bitte dort.',
  'refused.order-accepted': 'Dieser Auftrag ist angenommen. Zuerst stornieren, solange es geht, oder das Haus fragen.',
  'refused.answer-unreadable':
    'Diese Antwort ist nicht lesbar oder nicht glaubhaft. Eine Zahl mit Einheit schreiben, etwa 350 mm.',
  'refused.too-many-lines':
    'Das sind mehr Armaturen, als hier in einen Auftrag passen. Die ganze Liste an das Haus schicken.',
  'refused.file-too-large': 'Die Datei ist zu groß: höchstens 8 MB.',
  'refused.file-unreadable':
    'Diese Datei ist keine lesbare Liste. Eine Tabelle als CSV oder XLSX schicken oder die Zeilen einfügen; ein Foto gehört zu seiner Armatur.',
  'refused.photo-unreadable': 'Das ist kein Foto: ein Bild als JPEG, PNG, WebP oder HEIC schicken.',
  'refused.too-many-files': 'Mehr Fotos nimmt ein Auftrag nicht auf.',
  'refused.list-empty':
    'In dieser Liste ist keine Armatur. Die erste Zeile braucht Spaltennamen, etwa tag, size, type.',
  'refused.dates-past': 'Der erste Miettag muss morgen oder später sein.',
  'refused.form-unreadable':
    'Im Formular fehlt etwas oder ist nicht lesbar. Die Felder ansehen und noch einmal senden.',
  'refused.not-firm': 'Einige Armaturen muss das Haus ansehen, bevor es ein Angebot gibt: übergeben oder herausnehmen.',
  'refused.equipment-taken':
    'Einen Teil hat inzwischen jemand anderes bestellt, darum wurde nichts gebucht. Andere Tage wählen.',
  'refused.quote-lapsed': 'Dieses Angebot ist abgelaufen: ein neues anfordern.',
  'refused.quote-superseded': 'Ein neueres Angebot ist an seine Stelle getreten: den Auftrag neu ansehen.',
  'refused.no-such-quote': 'Dieses Angebot gilt nicht mehr: den Auftrag neu ansehen.',
  'refused.too-late-to-cancel': 'Hier kann nicht mehr storniert werden. Bitte das Haus anrufen.',
  'refused.too-quick': 'Das ging zu schnell für einen Menschen. Ein paar Sekunden warten und noch einmal senden.',
  'refused.no-lines': 'In diesem Auftrag ist noch keine Armatur: zuerst eine hinzufügen.',
  'refused.no-such-line': 'Diese Armatur ist nicht mehr in diesem Auftrag.',
  'refused.other': 'Das hat nicht geklappt. Die Seite neu laden; wenn es wieder geschieht, das Haus anrufen.',
};
