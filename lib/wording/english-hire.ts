/*
 * What self-service tells of an order after it was made: quotes that took another's place, the hire, notices, extensions, the return and its charges.
 * Invariant: placeholders in braces are filled by wording.ts; no sentence is put together from pieces of others.
 * Not here: everything up to the quote (english-screens.ts).
 * Read next: german-hire.ts.
 */
export const ENGLISH_HIRE = {
  'older.title': 'Earlier quotes',
  'older.superseded': '{quote}: replaced by the newer quote above',
  'older.lapsed': '{quote}: out of date',
  'older.declined': '{quote}: declined',
  'older.withdrawn': '{quote}: withdrawn by the house',
  'older.other': '{quote}: no longer stands',
  'quote.lapsed': 'This quote was valid until {date}. Ask for a new one below.',
  'quote.declined': 'This quote was declined.',
  'quote.withdrawn': 'The house has withdrawn this quote. Ask it for a new one.',
  'quote.option': 'Which of the offers?',
  'quote.accept-some': 'Order it',

  'booked.lapsed': 'Booking {booking} lapsed, because it was not confirmed in time. Nothing is held for you any more.',
  'booked.by-house': 'Booking {booking} was cancelled. Nothing is held for you.',
  'booked.why': 'What was said to it: {why}',
  'booked.days': 'Hire from {from} to {until}.',
  'booked.late': 'It was to be back by {until}. Give notice, bring it back, or ask to keep it longer.',
  'booked.sheets': 'Site sheets for the crew (PDF)',
  'booked.sheets-later': 'The site sheets can be opened here once the house has confirmed.',

  'steps.title': 'How far it is',
  'steps.ordered': 'Ordered',
  'steps.confirmed': 'Confirmed',
  'steps.ready': 'Made ready',
  'steps.out': 'On hire',
  'steps.back': 'Back',
  'steps.closed': 'Settled',
  'steps.now': 'now',

  'out.title': 'Delivered',
  'out.left': 'Left the house on {date}, {hour} UTC',
  'piece.serial': '{name}, no. {serial}',

  'notice.title': 'End the hire',
  'notice.lead-notice':
    'Say here that pieces are no longer needed. The charge for them ends with the day on which you say it; the house fetches them or you bring them. A notice cannot be taken back here.',
  'notice.lead-collection':
    'Say here that pieces are no longer needed, and the house arranges the collection. The charge ends when they are collected. A notice cannot be taken back here.',
  'notice.pieces': 'Which pieces?',
  'notice.give': 'Give off-hire notice',
  'notice.given': 'Off-hire notice {number}: {date}, {hour} UTC, said by {name}',
  'notice.keep': 'Until they are back you look after them: keep them dry, guarded and together.',

  'longer.title': 'Keep it longer',
  'longer.lead': 'Choose a new last day. What it costs is shown before anything is changed.',
  'longer.until': 'New last day',
  'longer.look': 'Show what it costs',
  'longer.free': 'Until {date} it stays free for you: {amount} {currency} more for the hire, without waiver and tax.',
  'longer.no-charge': 'Until {date} it stays free for you at no further charge for the hire.',
  'longer.take': 'Keep it until {date}',
  'longer.desk':
    'Until {date} a person of the house has to look, because others count on some of it or the terms change.',
  'longer.ask': 'Ask the house for {date}',
  'longer.given': 'Extended: the last day of hire is {date}.',
  'longer.waits': 'You asked to keep it until {date}. The house answers here; until then the last day stays as it is.',
  'longer.declined': 'You asked to keep it until {date}. The house cannot give that.',

  'back.title': 'Back at the house',
  'back.came': 'Came in on {date}',
  'back.good': 'in good order',
  'back.dirty': 'to be cleaned',
  'back.damaged': 'damaged',
  'back.parts': 'missing of it: {parts}',
  'back.missing': 'Not back yet',
  'back.lost': 'noted as lost',

  'note.title': 'Charges after the return',
  'note.of': 'Return note {number} of {date}',
  'note.total': 'In all {amount} {currency} with tax',
  'note.pdf': 'Return note as PDF (English)',
  'note.none': 'No charges after the return.',

  'device.title': 'Go on with',
  'device.line': 'What you fill in here is kept on this device until it is sent.',
  'device.order':
    'This device keeps the link and offers it on the first page. On a shared telephone, have it forgotten.',
  'device.forget': 'Forget everything on this device',

  'columns.title': 'What do the columns mean?',
  'columns.lead':
    'Not every column of the list was understood. Look at the marked ones, choose or leave out, then take the list.',
  'columns.sheet': 'Sheets of the file',
  'columns.no-name': 'Column {number}, without a name',
  'columns.guessed': 'This is a guess: choose what it is, or leave it out.',
  'columns.lines': '{count} valves come of it.',
  'columns.lines-one': 'One valve comes of it.',
  'columns.look': 'Show again',
  'columns.take': 'Take the list',
  'columns.problems': 'To be looked at',
  'columns.row': 'Row {row}:',
  'columns.cell': 'Row {row}, {column}:',
  'columns.not-taken': 'Not taken.',
  'columns.more': 'And {count} more.',
  'columns.tag': 'Name of the valve (tag)',
  'columns.qty': 'How many of them',
  'columns.location': 'Where it is',
  'columns.notes': 'Notes',
  'columns.ignore': '— left out —',
  'columns.remark': 'Remark (values are read out of it)',

  'apart.title': 'With the house',
  'apart.waits': '{number}: the house looks at it',
  'apart.back': '{number}: the house has answered',
  'apart.open': 'Open {number}',

  'refused.no-such-list': 'That list is not in this order. Send it again.',
  'refused.not-on-hire': 'Nothing of that is on hire without a notice. Load the page again.',
  'refused.said-by-missing': 'Write your name, so that the house knows who gave the notice.',
  'refused.not-to-extend': 'Nothing of this order can be extended now.',
  'refused.extension-shorter': 'The new last day must be later than the one that stands.',
  'refused.extension-too-long': 'That is too long to be extended here. Telephone the house.',
  'refused.option-missing': 'This quote offers several ways: choose one of them.',
  'refused.no-such-paper': 'That paper is not there yet.',
  'refused.no-such-booking': 'Nothing is booked for this order.',
} as const;
