/*
 * Reads a stem thread: `Tr36x6`, `Tr36x12(P6)`, `Tr40x7 LH`, `Acme 1-1/2-4`, `sq 50x6`.
 * Invariant: pitch is pitch; starts come only from the ISO form with P or from their own column, and a conflict is a problem.
 * Not here: lead, strength and friction (engineering).
 * Read next: read-line.ts.
 */
import type { StemThread } from '#lib/duty/schedule-line.ts';
import { type Fact, fact } from '#lib/units/known-value.ts';
import { parseNumber } from '#lib/units/parse-number.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { plainText, quoted } from './plain-text.ts';
import { reportImplausible, reportUnreadable } from './read-cell.ts';

const INCH = 0.0254;
/** Stems of valves turned by hand or tool. Common practice, no source. */
const MAJOR_M = { low: 0.006, high: 0.4 } as const;

export interface ReadThread {
  readonly thread: Fact<StemThread>;
  readonly hand?: 'left';
}

export function readThread(context: CellContext): ReadThread | undefined {
  const text = cellText(context, 'stem_thread');
  if (text === undefined) return undefined;
  const parsed = parseThread(text);
  if (parsed === null) {
    reportUnreadable(context, 'stem_thread', text);
    return undefined;
  }
  const { thread, lead_m } = parsed;
  if (
    thread.majorDiameter_m < MAJOR_M.low ||
    thread.majorDiameter_m > MAJOR_M.high ||
    thread.pitch_m <= 0 ||
    thread.pitch_m > thread.majorDiameter_m / 2
  ) {
    reportImplausible(context, 'stem_thread', 'diameter 6 to 400 mm, pitch at most half of it');
    return undefined;
  }
  if (lead_m !== undefined && thread.starts === undefined) {
    report(context, {
      code: 'thread-lead-odd',
      column: 'stem_thread',
      sentence: `Stem thread ${quoted(text)} gives a lead that is no multiple of its pitch; the pitch is kept and the lead left out.`,
      remedy: 'Measure ten threads and count the starts.',
    });
  }
  return {
    thread: fact(thread, originOf(context, 'stem_thread')),
    ...(/\blh\b|left|-l\b/.test(plainText(text)) ? { hand: 'left' as const } : {}),
  };
}

interface ParsedThread {
  readonly thread: StemThread;
  readonly lead_m?: number;
}

export function parseThread(designation: string): ParsedThread | null {
  const text = plainText(designation).replace(/×|\*/g, 'x').replace(/[“”″]/g, '"');
  return parseTrapezoidal(text, designation) ?? parseAcme(text, designation) ?? parseSquare(text, designation);
}

function parseTrapezoidal(text: string, designation: string): ParsedThread | null {
  const found =
    /^(?:tr|trapez\w*|tpz|tm)\.?\s*([\d.,]+)\s*(?:mm)?\s*x\s*([\d.,]+)\s*(?:mm)?\s*(?:\(?\s*p\s*([\d.,]+)\s*(?:mm)?\s*\)?)?/.exec(
      text,
    );
  const major = positive(found?.[1]);
  const second = positive(found?.[2]);
  if (!found || major === null || second === null) return null;
  const base = { form: 'trapezoidal' as const, majorDiameter_m: mm(major), designation: designation.trim() };
  const pitch = found[3] === undefined ? null : positive(found[3]);
  if (pitch === null) return { thread: { ...base, pitch_m: mm(second), ...startsIn(text) } };
  const starts = second / pitch;
  const whole = Math.abs(starts - Math.round(starts)) < 0.01 && starts >= 1 && starts <= 8;
  return {
    thread: { ...base, pitch_m: mm(pitch), ...(whole ? { starts: Math.round(starts) } : {}) },
    lead_m: mm(second),
  };
}

function parseAcme(text: string, designation: string): ParsedThread | null {
  if (!/acme/.test(text)) return null;
  const rest = text
    .replace(/(?:stub )?acme|\b\d+[gc]\b|["]|inch|\bin\b/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const found = /^(\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?)\s*(?:-|x|,|\s)\s*(\d+(?:[.,]\d+)?)\s*(?:tpi)?\b/.exec(
    rest,
  );
  const major = found?.[1] === undefined ? null : parseNumber(found[1]);
  const perInch = positive(found?.[2]);
  if (major === null || perInch === null) return null;
  return {
    thread: {
      form: 'acme',
      majorDiameter_m: tidy(major.value * INCH),
      pitch_m: tidy(INCH / perInch),
      ...startsIn(text),
      designation: designation.trim(),
    },
  };
}

function parseSquare(text: string, designation: string): ParsedThread | null {
  const inches =
    /^(?:sq|square)\.?\s*(\d+[- ]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?)\s*(?:"|in(?:ch)?)?\s*(?:x|-)\s*([\d.,]+)\s*tpi/.exec(
      text,
    );
  const majorInch = inches?.[1] === undefined ? null : parseNumber(inches[1]);
  const perInch = positive(inches?.[2]);
  if (majorInch !== null && perInch !== null) {
    return {
      thread: {
        form: 'square',
        majorDiameter_m: tidy(majorInch.value * INCH),
        pitch_m: tidy(INCH / perInch),
        designation: designation.trim(),
      },
    };
  }
  const found = /^(?:sq|square)\.?\s*([\d.,]+)\s*(?:mm)?\s*x\s*([\d.,]+)/.exec(text);
  const major = positive(found?.[1]);
  const pitch = positive(found?.[2]);
  if (major === null || pitch === null) return null;
  return {
    thread: {
      form: 'square',
      majorDiameter_m: mm(major),
      pitch_m: mm(pitch),
      ...startsIn(text),
      designation: designation.trim(),
    },
  };
}

function startsIn(text: string): { readonly starts?: number } {
  const starts = Number(/(\d)\s*-?\s*start/.exec(text)?.[1] ?? (/double start/.test(text) ? 2 : 0));
  return starts >= 1 && starts <= 8 ? { starts } : {};
}

function positive(text: string | undefined): number | null {
  const read = text === undefined ? null : parseNumber(text);
  return read !== null && read.value > 0 ? read.value : null;
}

function mm(value: number): number {
  return tidy(value / 1000);
}

function tidy(value: number): number {
  return Number(value.toPrecision(15));
}
