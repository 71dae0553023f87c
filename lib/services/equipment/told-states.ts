/*
 * Kept states of models, rates and the house as texts by the words of their fields, for a history that people read.
 * Invariant: what has no field of its own is told by the words of its path, never left out.
 * Not here: which states there are (../keep-change.ts) and what differs (equipment-history.ts).
 * Read next: equipment-history.ts.
 */

import { columnName, fieldsOf } from '#lib/contracts/equipment-fields.ts';
import { flatOf } from '#lib/contracts/equipment-flat.ts';
import { type HouseField, PRICE_SECTIONS, STANDING_SECTIONS } from '#lib/contracts/house-fields.ts';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { decimalText } from '#lib/money/currency.ts';
import type { ModelState } from './model-record.ts';

/** Texts by what they are called. */
export type Told = ReadonlyMap<string, string>;

export function toldModel(state: ModelState | null, currency: string): Told {
  if (state === null) return new Map();
  const flat = flatOf(state.json, currency);
  return new Map([
    ...fieldsOf(state.json.role, currency).map(
      (field) => [`${field.group}: ${columnName(field)}`, flat[field.path] ?? ''] as const,
    ),
    ['retired on', state.retired_on ?? ''],
  ]);
}

/** Cards by their first day. */
export type RatesState = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

export function toldRates(state: RatesState | null, currency: string): Told {
  return new Map(
    Object.entries(state ?? {}).flatMap(([day, card]) =>
      Object.entries(card).map(
        ([key, value]) =>
          [
            `from ${day}: ${RATE_WORDS[key] ?? key.replaceAll('_', ' ')}`,
            key.endsWith('_minor') ? decimalText(Number(value), currency) : String(value),
          ] as const,
      ),
    ),
  );
}

const RATE_WORDS: Readonly<Record<string, string>> = {
  day_minor: 'a day',
  week_minor: 'a week',
  four_weeks_minor: 'four weeks',
  minimum_days: 'minimum days',
};

const HOUSE_FIELDS: readonly HouseField[] = [...STANDING_SECTIONS, ...PRICE_SECTIONS].flatMap(({ fields }) => fields);

export function toldHouse(state: unknown, currency: string): Told {
  return new Map(leavesOf(state, []).map(([keys, value]) => toldLeaf(keys, { value, currency })));
}

type Keys = readonly string[];

function leavesOf(...[value, keys]: readonly [value: unknown, keys: Keys]): readonly (readonly [Keys, string])[] {
  if (value === null || value === undefined) return [];
  if (typeof value !== 'object') return [[keys, String(value)]];
  return Object.entries(value).flatMap(([key, below]) => leavesOf(below, [...keys, key]));
}

interface Leaf {
  readonly value: string;
  readonly currency: string;
}

/** `from 2026-03-01: Bands 2, Delivery` and the amount as it is read. */
function toldLeaf(keys: Keys, { value, currency }: Leaf): readonly [string, string] {
  const [first = '', ...rest] = keys;
  const day = isIsoDate(first) || first === 'the beginning' ? `from ${first}: ` : '';
  const path = day === '' ? keys : rest;
  const field = HOUSE_FIELDS.find((one) => path.join('.') === one.path || path.join('.').startsWith(`${one.path}.`));
  if (field === undefined) return [`${day}${path.map(wordOf).join(' ')}`, value];
  const below = path.slice(field.path.split('.').length);
  const column = field.kind === 'rows' ? field.columns.find((one) => one.path === below[1]) : undefined;
  const place = below[0] === undefined ? '' : ` ${Number(below[0]) + 1}`;
  const isAmount = (column ?? field).kind === 'amount';
  return [
    `${day}${field.label}${place}${column === undefined ? '' : `, ${column.label}`}`,
    isAmount ? decimalText(Number(value), currency) : value,
  ];
}

function wordOf(key: string): string {
  return /^\d+$/.test(key) ? String(Number(key) + 1) : key.replaceAll('_', ' ');
}
