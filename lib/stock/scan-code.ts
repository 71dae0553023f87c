/*
 * Reads what a code reader or a finger types into a scan field: a unit's serial number, a counted model, a bay, a case, a booking.
 * Invariant: stray blanks, small letters and what a reader puts around a code never change what it means; what cannot be read is told in a sentence.
 * Not here: whether such a unit, bay, case or booking exists (services of the yard).
 * Read next: unit.ts.
 */
export type Scan = UnitScan | ModelScan | BayScan | CaseScan | BookingScan | UnknownScan;

export interface UnitScan {
  readonly kind: 'unit';
  readonly serial: string;
}

/** Counted pieces have no serial number: the label on their box names the model. */
export interface ModelScan {
  readonly kind: 'model';
  readonly model: string;
}

export interface BayScan {
  readonly kind: 'bay';
  readonly depot: string;
  readonly bay: string;
}

export interface CaseScan {
  readonly kind: 'case';
  readonly booking: string;
  /** Cases of a booking are counted from 1. */
  readonly number: number;
}

export interface BookingScan {
  readonly kind: 'booking';
  readonly number: string;
}

export interface UnknownScan {
  readonly kind: 'unknown';
  /** What was read, tidied. */
  readonly text: string;
  readonly sentence: string;
}

/** Longer than any label of ours: somebody scanned a paper, or two labels ran together. */
const LONGEST_CODE = 60;

const BAY = /^BAY[:;]([A-Z0-9]{1,8})\/([A-Z0-9][A-Z0-9-]{0,11})$/;
const MODEL = /^MODEL[:;]([A-Z0-9][A-Z0-9-]{0,23})$/;
const CASE = /^CASE[:;](B-\d{1,8})\/(\d{1,3})$/;
const BOOKING = /^B-?(\d{1,8})$/;
/** Letters and figures with at least one figure, in parts joined by hyphens: D112-01, and what other houses engrave. */
const SERIAL = /^(?=[A-Z0-9-]*\d)[A-Z0-9]+(-[A-Z0-9]+)+$/;

export function readScan(typed: string): Scan {
  const text = tidied(typed);
  if (text === '')
    return unknown(text, 'Nothing was read: hold the reader on the label, or type the number and press Enter.');
  if (text.length > LONGEST_CODE) {
    return unknown(text.slice(0, LONGEST_CODE), 'That is too long for a label: scan one label at a time.');
  }
  const bay = BAY.exec(text);
  if (bay) return { kind: 'bay', depot: bay[1] ?? '', bay: bay[2] ?? '' };
  const model = MODEL.exec(text);
  if (model) return { kind: 'model', model: model[1] ?? '' };
  const box = CASE.exec(text);
  if (box) return { kind: 'case', booking: box[1] ?? '', number: Number(box[2]) };
  const booking = BOOKING.exec(text);
  if (booking) return { kind: 'booking', number: bookingNumber(booking[1] ?? '') };
  if (SERIAL.test(text)) return { kind: 'unit', serial: text };
  return unknown(text, tellUnknown(text));
}

/** What a bay's label carries. */
export function bayCode({ depot, bay }: { readonly depot: string; readonly bay: string }): string {
  return `BAY:${depot}/${bay}`;
}

/** What the label on a box of counted pieces carries. */
export function modelCode(model: string): string {
  return `MODEL:${model}`;
}

/** What a case's label carries. */
export function caseCode({ booking, number }: { readonly booking: string; readonly number: number }): string {
  return `CASE:${booking}/${number}`;
}

/** Booking numbers are printed with five figures; a finger leaves the noughts out. */
function bookingNumber(figures: string): string {
  return `B-${figures.replace(/^0+(?=\d)/, '').padStart(5, '0')}`;
}

/**
 * Readers may put a symbology identifier (ISO/IEC 15424: a closing bracket, a letter, a figure) before the code and control characters around it;
 * typed dashes and blanks come in several forms.
 */
function tidied(typed: string): string {
  return typed
    .normalize('NFKC')
    .replace(/[\p{Cc}\p{Cf}]/gu, '')
    .trim()
    .replace(/^\][A-Za-z][0-9A-Za-z]/, '')
    .replace(/^\*(.*)\*$/, '$1')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\s+/g, '')
    .toUpperCase();
}

function unknown(text: string, sentence: string): UnknownScan {
  return { kind: 'unknown', text, sentence };
}

function tellUnknown(text: string): string {
  if (/^BAY[:;]?/.test(text)) return `${text} is not a whole bay label: it reads BAY:depot/bay, such as BAY:VEN/A01.`;
  if (/^CASE[:;]?/.test(text))
    return `${text} is not a whole case label: it reads CASE:booking/number, such as CASE:B-00012/1.`;
  if (/^\d{8,14}$/.test(text))
    return `${text} is an article code from a package, not a label of the house: scan the label with the serial number.`;
  return `${text} is no serial number, bay, case or booking of the house: scan the label again, or type the serial number as it is engraved, such as D112-01.`;
}
