/*
 * Why a valve or an order goes to the house, and what was refused, in English.
 * Invariant: a text for every code of HAND_OVER_CODES and every refusal that self-service may tell.
 * Not here: when each holds (lib/questions/hand-over.ts, lib/services/self-service).
 * Read next: reason-words.ts.
 */
export const ENGLISH_REASONS = {
  'reason.zone': 'It stands in hazardous zone {zone}: what may be used there is checked by a person.',
  'reason.zone-unknown': 'Nobody has said yet whether it is a hazardous area, and that is never guessed.',
  'reason.locked': 'It is locked or tagged by somebody. What another person has locked is not turned.',
  'reason.seized': 'It does not move at all. A seized valve is looked at before anything is hired for it.',
  'reason.service': 'What flows in it ({service}) needs equipment that a person chooses.',
  'reason.nothing-fits': 'Nothing that the house rents fits it as it is described.',
  'reason.made-to-fit': 'It needs something made to fit: {part}.',
  'reason.never-exceed-guessed': 'It may need up to {high_nm} N·m, and what it bears is only guessed.',
  'reason.window-empty':
    'It probably needs more torque ({high_nm} N·m at most) than it may be given ({ceiling_nm} N·m).',
  'reason.range-too-wide': 'What it needs is too uncertain: {low_nm} to {high_nm} N·m.',
  'reason.not-in-these-days': 'Not everything is free on these days, or the days are too few.',
  'reason.value': 'Orders above {limit} without tax are looked at by a person.',

  'refused.no-such-link': 'This link leads nowhere. Look at the one you were given, or start anew.',
  'refused.link-expired': 'This link has expired. Ask the house for a new one, or start anew.',
  'refused.link-withdrawn': 'This link was withdrawn. Ask the house for a new one.',
  'refused.link-only-looks': 'This link is for looking only.',
  'refused.too-many-tries': 'That was asked too often. Wait a quarter of an hour, then try again.',
  'refused.busy': 'Many people ask at this moment. Wait a minute and load the page again.',
  'refused.order-with-desk': 'The house is working on this order; ask there for a change.',
  'refused.order-accepted': 'This order was accepted. Cancel it first while that is possible, or ask the house.',
  'refused.answer-unreadable':
    'That answer cannot be read or is not plausible. Write a number with its unit, such as 350 mm.',
  'refused.too-many-lines': 'That is more valves than fit into one order here. Send the whole list to the house.',
  'refused.file-too-large': 'That file is too large: 8 MB at most.',
  'refused.file-unreadable':
    'That file is no list that can be read. Send a table as CSV or XLSX, or paste its rows; a photo goes with its valve.',
  'refused.photo-unreadable': 'That is no photo: send a JPEG, PNG, WebP or HEIC picture.',
  'refused.too-many-files': 'There are as many photos as an order takes.',
  'refused.list-empty':
    'There is no valve in that list. The first row needs names of columns, such as tag, size, type.',
  'refused.dates-past': 'The first day of hire must be tomorrow or later.',
  'refused.form-unreadable':
    'Something in the form is missing or cannot be read. Look at the fields and send it again.',
  'refused.not-firm':
    'Some valves need a look by the house before there can be a quote: hand them over, or take them out.',
  'refused.equipment-taken':
    'Some of it was ordered by somebody else meanwhile, so nothing was booked. Choose other dates.',
  'refused.quote-lapsed': 'That quote is out of date: ask for a new one.',
  'refused.quote-superseded': 'A newer quote has taken the place of that one: look at the order again.',
  'refused.no-such-quote': 'That quote no longer stands: look at the order again.',
  'refused.too-late-to-cancel': 'It is too late to cancel here. Telephone the house.',
  'refused.too-quick': 'That went too quickly for a person. Wait a few seconds and send it again.',
  'refused.no-lines': 'There is no valve in this order yet: add one first.',
  'refused.no-such-line': 'That valve is not in this order any more.',
  'refused.other': 'That did not work. Load the page again; if it happens again, telephone the house.',
} as const;
