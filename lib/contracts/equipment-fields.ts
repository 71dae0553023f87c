/*
 * The fields of each role in the order of forms and CSV columns.
 * Invariant: every leaf of the catalogue's schema is one field, and labels of a role are unique.
 * Not here: turning a model into texts and back (equipment-flat.ts).
 * Read next: equipment-flat.ts.
 */
import type { Role } from '#lib/equipment/model.ts';
import type { EquipmentField } from './equipment-field.ts';
import { baseFields } from './equipment-fields-base.ts';
import { DRIVE_FIELDS } from './equipment-fields-drive.ts';
import { ADAPTER_FIELDS, EXTENSION_FIELDS, HEAD_FIELDS } from './equipment-fields-parts.ts';
import { ACCESSORY_FIELDS, OPTION_FIELDS, RESTRAINT_FIELDS } from './equipment-fields-supports.ts';

const OWN: Readonly<Record<Role, readonly EquipmentField[]>> = {
  drive: DRIVE_FIELDS,
  head: HEAD_FIELDS,
  adapter: ADAPTER_FIELDS,
  extension: EXTENSION_FIELDS,
  restraint: RESTRAINT_FIELDS,
  option: OPTION_FIELDS,
  accessory: ACCESSORY_FIELDS,
};

/** Amounts are written in whole units of the currency, with its decimals. */
export function fieldsOf(role: Role, currency: string): readonly EquipmentField[] {
  return [...baseFields(currency), ...OWN[role]];
}

/** `stall torque [N·m]`: how a column is headed. */
export function columnName(field: EquipmentField): string {
  return field.unit === '' || field.unit === '1' ? field.label : `${field.label} [${field.unit}]`;
}
