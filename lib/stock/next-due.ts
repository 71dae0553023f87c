/*
 * On which day the next inspection or calibration falls due when one was done.
 * Invariant: the next day lies after the day it was done; the same day of the month where there is one, the month's last day otherwise.
 * Not here: who may inspect, and what is looked at: the maker's data and local rules decide.
 * Read next: unit.ts.
 */
import { type IsoDate, isIsoDate } from '#lib/kernel/date-range.ts';

export const CHECK_KINDS = ['inspection', 'calibration'] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/**
 * Months from one to the next. Torque tools: 12 months where the user has no other interval, ISO 6789-2:2017 (from memory).
 * Slings and chains: six months, as for accessories for lifting in the United Kingdom (LOLER 1998, regulation 9).
 * Everything else twelve: common practice, no source.
 */
const MONTHS = { calibration: 12, sling: 6, inspection: 12 } as const;

interface Done {
  readonly kind: CheckKind;
  readonly doneOn: IsoDate;
  /** Chains, slings and straps are looked at more often. */
  readonly pulls: 'chain or sling' | 'other';
}

export function nextDue({ kind, doneOn, pulls }: Done): IsoDate {
  if (kind === 'calibration') return addMonths({ day: doneOn, months: MONTHS.calibration });
  return addMonths({ day: doneOn, months: pulls === 'other' ? MONTHS.inspection : MONTHS.sling });
}

/** 31 August and six months is the last day of February. */
export function addMonths({ day, months }: { readonly day: IsoDate; readonly months: number }): IsoDate {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const index = year * 12 + (month - 1) + months;
  const onTheDay = `${pad(Math.floor(index / 12), 4)}-${pad((index % 12) + 1, 2)}-`;
  for (let last = date; last > 28; last -= 1) {
    const found = `${onTheDay}${pad(last, 2)}`;
    if (isIsoDate(found)) return found;
  }
  return `${onTheDay}${pad(Math.min(date, 28), 2)}`;
}

function pad(value: number, length: number): string {
  return String(value).padStart(length, '0');
}
