/*
 * What self-service tells of an order after it was made, in German.
 * Invariant: the same keys and placeholders as english-hire.ts; a test holds it.
 * Not here: everything up to the quote (german-screens.ts).
 * Read next: wording.ts.
 */
import type { ENGLISH_HIRE } from './english-hire.ts';

export const GERMAN_HIRE: Readonly<Record<keyof typeof ENGLISH_HIRE, string>> = {
  'older.title': 'Frühere Angebote',
  'older.superseded': '{quote}: durch das neuere Angebot oben ersetzt',
  'older.lapsed': '{quote}: abgelaufen',
  'older.declined': '{quote}: abgelehnt',
  'older.withdrawn': '{quote}: vom Haus zurückgezogen',
  'older.other': '{quote}: gilt nicht mehr',
  'quote.lapsed': 'Dieses Angebot galt bis {date}. Unten kann ein neues angefordert werden.',
  'quote.declined': 'Dieses Angebot wurde abgelehnt.',
  'quote.withdrawn': 'Das Haus hat dieses Angebot zurückgezogen. Dort ein neues erbitten.',
  'quote.option': 'Welches der Angebote?',
  'quote.accept-some': 'Bestellen',

  'booked.lapsed':
    'Buchung {booking} ist verfallen, weil sie nicht rechtzeitig bestätigt wurde. Es ist nichts mehr reserviert.',
  'booked.by-house': 'Buchung {booking} wurde storniert. Es ist nichts reserviert.',
  'booked.why': 'Dazu wurde gesagt: {why}',
  'booked.days': 'Miete vom {from} bis {until}.',
  'booked.late': 'Die Rückgabe war für {until} vereinbart. Abmelden, zurückbringen oder um längere Miete bitten.',
  'booked.sheets': 'Baustellenblätter für die Trupps (PDF)',
  'booked.sheets-later': 'Die Baustellenblätter lassen sich hier öffnen, sobald das Haus bestätigt hat.',

  'steps.title': 'Wie weit es ist',
  'steps.ordered': 'Bestellt',
  'steps.confirmed': 'Bestätigt',
  'steps.ready': 'Bereitgestellt',
  'steps.out': 'In Miete',
  'steps.back': 'Zurück',
  'steps.closed': 'Abgerechnet',
  'steps.now': 'jetzt',

  'out.title': 'Geliefert',
  'out.left': 'Ausgegangen am {date}, {hour} UTC',
  'piece.serial': '{name}, Nr. {serial}',

  'notice.title': 'Miete beenden',
  'notice.lead-notice':
    'Hier sagen, dass Teile nicht mehr gebraucht werden. Ihre Miete endet mit dem Tag der Abmeldung; das Haus holt sie, oder sie werden gebracht. Zurücknehmen lässt sich eine Abmeldung hier nicht.',
  'notice.lead-collection':
    'Hier sagen, dass Teile nicht mehr gebraucht werden; das Haus verabredet die Abholung. Die Miete endet mit der Abholung. Zurücknehmen lässt sich eine Abmeldung hier nicht.',
  'notice.pieces': 'Welche Teile?',
  'notice.give': 'Abmelden',
  'notice.given': 'Abmeldung {number}: {date}, {hour} UTC, durch {name}',
  'notice.keep': 'Bis sie zurück sind, bleibt die Obhut beim Mieter: trocken, bewacht und beisammen halten.',

  'longer.title': 'Länger behalten',
  'longer.lead': 'Einen neuen letzten Tag wählen. Was es kostet, steht da, bevor sich etwas ändert.',
  'longer.until': 'Neuer letzter Tag',
  'longer.look': 'Kosten zeigen',
  'longer.free': 'Bis {date} bleibt alles frei: {amount} {currency} mehr Miete, ohne Schadenspauschale und Steuer.',
  'longer.no-charge': 'Bis {date} bleibt alles frei, ohne weitere Miete.',
  'longer.take': 'Bis {date} behalten',
  'longer.desk':
    'Für {date} muss ein Mensch im Haus hinsehen, weil andere mit einem Teil davon rechnen oder sich Bedingungen ändern.',
  'longer.ask': 'Beim Haus um {date} bitten',
  'longer.given': 'Verlängert: der letzte Miettag ist der {date}.',
  'longer.waits':
    'Gewünscht ist Miete bis {date}. Das Haus antwortet hier; bis dahin bleibt der letzte Tag, wie er ist.',
  'longer.declined': 'Gewünscht war Miete bis {date}. Das Haus kann das nicht geben.',

  'back.title': 'Zurück im Haus',
  'back.came': 'Eingegangen am {date}',
  'back.good': 'in Ordnung',
  'back.dirty': 'zu reinigen',
  'back.damaged': 'beschädigt',
  'back.parts': 'daran fehlt: {parts}',
  'back.missing': 'Noch nicht zurück',
  'back.lost': 'als verloren vermerkt',

  'note.title': 'Kosten nach der Rückgabe',
  'note.of': 'Rückgabeschein {number} vom {date}',
  'note.total': 'Zusammen {amount} {currency} mit Steuer',
  'note.pdf': 'Rückgabeschein als PDF (Englisch)',
  'note.none': 'Keine Kosten nach der Rückgabe.',

  'device.title': 'Weitermachen mit',
  'device.line': 'Was hier ausgefüllt wird, bleibt auf diesem Gerät, bis es gesendet ist.',
  'device.order':
    'Dieses Gerät merkt sich den Link und bietet ihn auf der ersten Seite an. Auf einem geteilten Telefon vergessen lassen.',
  'device.forget': 'Alles auf diesem Gerät vergessen',

  'columns.title': 'Was bedeuten die Spalten?',
  'columns.lead':
    'Nicht jede Spalte der Liste wurde verstanden. Die markierten ansehen, wählen oder weglassen, dann die Liste übernehmen.',
  'columns.sheet': 'Blätter der Datei',
  'columns.no-name': 'Spalte {number}, ohne Namen',
  'columns.guessed': 'Das ist geraten: wählen, was es ist, oder weglassen.',
  'columns.lines': 'Daraus werden {count} Armaturen.',
  'columns.lines-one': 'Daraus wird eine Armatur.',
  'columns.look': 'Neu zeigen',
  'columns.take': 'Liste übernehmen',
  'columns.problems': 'Anzusehen',
  'columns.row': 'Zeile {row}:',
  'columns.cell': 'Zeile {row}, {column}:',
  'columns.not-taken': 'Nicht übernommen.',
  'columns.more': 'Und {count} weitere.',
  'columns.tag': 'Name der Armatur (Kennzeichen)',
  'columns.qty': 'Anzahl',
  'columns.location': 'Wo sie steht',
  'columns.notes': 'Notizen',
  'columns.ignore': '— weggelassen —',
  'columns.remark': 'Bemerkung (Werte werden daraus gelesen)',

  'apart.title': 'Beim Haus',
  'apart.waits': '{number}: das Haus sieht es an',
  'apart.back': '{number}: das Haus hat geantwortet',
  'apart.open': '{number} öffnen',

  'refused.no-such-list': 'Diese Liste gehört nicht zu diesem Auftrag. Noch einmal senden.',
  'refused.not-on-hire': 'Davon ist nichts ohne Abmeldung in Miete. Die Seite neu laden.',
  'refused.said-by-missing': 'Den Namen schreiben, damit das Haus weiß, wer abgemeldet hat.',
  'refused.not-to-extend': 'Von diesem Auftrag lässt sich jetzt nichts verlängern.',
  'refused.extension-shorter': 'Der neue letzte Tag muss nach dem jetzigen liegen.',
  'refused.extension-too-long': 'So lange kann hier nicht verlängert werden. Bitte das Haus anrufen.',
  'refused.option-missing': 'Dieses Angebot hat mehrere Wege: einen davon wählen.',
  'refused.no-such-paper': 'Dieses Papier gibt es noch nicht.',
  'refused.no-such-booking': 'Für diesen Auftrag ist nichts gebucht.',
};
