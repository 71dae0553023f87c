/*
 * One field of a model as text and as the value in catalogue JSON, both ways.
 * Invariant: what was written from a value reads back as the same value; a text that cannot be read says what may be written.
 * Not here: putting fields together to a model (equipment-flat.ts).
 * Read next: equipment-flat.ts.
 */
import { COUPLING_SIZES, type CouplingForm } from '#lib/equipment/coupling.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { currencyDecimals, decimalText } from '#lib/money/currency.ts';
import { parseQuantityRange } from '#lib/units/parse-quantity.ts';
import { type Dimension, findUnit, fromSi } from '#lib/units/unit-table.ts';
import type { EquipmentField } from './equipment-field.ts';
import { tidy } from './equipment-quantity.ts';

export function isMoney(field: EquipmentField): boolean {
  return field.path.endsWith('_minor');
}

export function writeField(field: EquipmentField, value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return isMoney(field) ? decimalText(value, field.unit) : String(value);
  if (field.form === 'coupling') return writeCoupling(value);
  if (Array.isArray(value)) return value.map((one: unknown) => escaped(writeEntry(field, one))).join('; ');
  return String(value);
}

function writeCoupling(value: unknown): string {
  const { form, size, gender } = held(value);
  return `${form === 'square' ? `square ${size}` : size} ${gender}`;
}

function writeEntry(field: EquipmentField, value: unknown): string {
  const entry = held(value);
  if (field.form === 'sockets') return `${entry.shape} ${entry.across_flats_mm} / ${entry.slack_mm}`;
  if (field.form === 'curve') return `${entry.torque_nm} @ ${entry.speed_rpm}`;
  return String(value);
}

function held(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? { ...value } : {};
}

/** A semicolon inside an entry is written `\;`. */
function escaped(text: string): string {
  return text.replace(/[\\;]/g, (mark) => `\\${mark}`);
}

function entriesOf(text: string): readonly string[] {
  const entries = text.match(/(?:\\.|[^\\;])+/gs) ?? [];
  return entries.map((entry) => entry.replace(/\\(.)/gs, '$1').trim()).filter((entry) => entry !== '');
}

const wrong = (sentence: string): Result<never> => failed({ code: 'field-unreadable', sentence });

/** The value in JSON of a text that is not empty. */
export function readField(field: EquipmentField, text: string): Result<unknown> {
  switch (field.form) {
    case 'text':
      return ok(text);
    case 'number':
    case 'count':
      return isMoney(field) ? readAmount(field, text) : readNumber(field, text);
    case 'yes or no':
      return /^(yes|no)$/i.test(text) ? ok(text.toLowerCase() === 'yes') : wrong('is neither yes nor no');
    case 'choice':
      return field.choices.includes(text) ? ok(text) : wrong(`is none of ${field.choices.join(', ')}`);
    case 'choices':
      return readChoices(field, text);
    case 'texts':
      return ok(entriesOf(text));
    case 'coupling':
      return readCoupling(text);
    case 'sockets':
      return readEntries(text, readSocket, 'write shape, size across flats / slack: square 32 / 2');
    case 'curve':
      return readEntries(text, readPoint, 'write torque @ speed: 0 @ 66; 28 @ 40; 56 @ 0');
  }
}

function readChoices(field: EquipmentField, text: string): Result<unknown> {
  const entries = entriesOf(text);
  const strange = entries.find((entry) => !field.choices.includes(entry));
  return strange === undefined
    ? ok(entries)
    : wrong(`holds “${strange}”, which is none of ${field.choices.join(', ')}`);
}

function readAmount(field: EquipmentField, text: string): Result<unknown> {
  const decimals = currencyDecimals(field.unit);
  const plain = new RegExp(decimals === 0 ? '^\\d{1,12}$' : `^\\d{1,12}(\\.\\d{1,${decimals}})?$`);
  if (!plain.test(text))
    return wrong(
      `is no amount of ${field.unit}: write digits and a point, for example ${decimalText(3450, field.unit)}`,
    );
  const [whole = '0', fraction = ''] = text.split('.');
  return ok(Number(whole) * 10 ** decimals + Number(fraction.padEnd(decimals, '0')));
}

/** Dimension of each unit that a field may have, so that `8 in` is read where millimetres are asked for. */
const DIMENSION_OF: Readonly<Record<string, Dimension>> = {
  N·m: 'torque',
  mm: 'length',
  m: 'length',
  kg: 'mass',
  '1/min': 'rotation',
  bar: 'pressure',
  'l/min': 'flow',
  N: 'force',
  W: 'power',
  '°C': 'temperature',
};

function readNumber(field: EquipmentField, text: string): Result<unknown> {
  if (/^-?\d+(\.\d+)?(e[-+]?\d+)?$/i.test(text)) return ranged(field, Number(text));
  const dimension = DIMENSION_OF[field.unit];
  const unit = dimension === undefined ? undefined : findUnit({ text: field.unit, dimension });
  const read = dimension === undefined ? undefined : parseQuantityRange({ text, dimension, bareUnit: field.unit });
  if (unit !== undefined && read?.ok && read.value.hedge === 'exact' && !read.value.ambiguousNumber)
    return ranged(field, tidy(fromSi(unit, read.value.nominal)));
  const asked = field.unit === '' || field.unit === '1' ? 'a number' : `a number of ${field.unit}`;
  return wrong(`“${text.slice(0, 30)}” is not readable: write ${asked} with a point as its decimal mark`);
}

function ranged(field: EquipmentField, value: number): Result<unknown> {
  const [low, high] = field.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (field.form === 'count' && !Number.isInteger(value)) return wrong('is not a whole number');
  if (value >= low && value <= high) return ok(value);
  const unit = field.unit === '1' || field.unit === '' ? '' : ` ${field.unit}`;
  return wrong(`is ${value}${unit}, and plausible is ${low} to ${high}${unit}`);
}

function readCoupling(text: string): Result<unknown> {
  const [, name = '', gender = ''] = /^(.*) (male|female)$/.exec(text) ?? [];
  const size = name.replace(/^square /, '');
  const forms: readonly CouplingForm[] = ['square', 'spline', 'face'];
  const form = forms.find((one) => COUPLING_SIZES[one].some((known) => known === size));
  const said = form !== undefined && (form === 'square') === name.startsWith('square ');
  return said
    ? ok({ form, size, gender })
    : wrong('is none of the couplings of the house: square 20 male, house spline 30 female and so on');
}

function readEntries(
  text: string,
  ...[read, remedy]: readonly [read: (entry: string) => unknown, remedy: string]
): Result<unknown> {
  const entries = entriesOf(text).map(read);
  return entries.length > 0 && entries.every((entry) => entry !== null)
    ? ok(entries)
    : wrong(`is not readable: ${remedy}`);
}

const NUMBER = '(\\d+(?:\\.\\d+)?(?:e[-+]?\\d+)?)';
const SOCKET = new RegExp(`^(.+) ${NUMBER} ?/ ?${NUMBER}$`, 'is');
const POINT = new RegExp(`^${NUMBER} ?@ ?${NUMBER}$`, 'i');

function readSocket(entry: string): unknown {
  const [, shape, across, slack] = SOCKET.exec(entry) ?? [];
  return shape === undefined ? null : { shape: shape.trim(), across_flats_mm: Number(across), slack_mm: Number(slack) };
}

function readPoint(entry: string): unknown {
  const [, torque, speed] = POINT.exec(entry) ?? [];
  return torque === undefined ? null : { torque_nm: Number(torque), speed_rpm: Number(speed) };
}
