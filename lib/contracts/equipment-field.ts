/*
 * A field of a model as forms and CSV columns show it: where it is in the catalogue JSON, its words, its unit and its range.
 * Invariant: a field is one text; what it means in JSON follows from its form alone.
 * Not here: the fields of each role (equipment-fields-*.ts) and reading a whole model (equipment-flat.ts).
 * Read next: equipment-fields.ts.
 */
import { COUPLING_SIZES } from '#lib/equipment/coupling.ts';

export type FieldForm =
  | 'text'
  | 'number'
  | 'count'
  | 'yes or no'
  | 'choice'
  | 'choices'
  | 'texts'
  | 'coupling'
  | 'sockets'
  | 'curve';

export interface EquipmentField {
  /** Keys and places joined by points, as in `facts.gears.0.stall_torque_nm`. */
  readonly path: string;
  readonly label: string;
  readonly form: FieldForm;
  /** Empty where the field is no quantity. */
  readonly unit: string;
  readonly help: string;
  /** Plausible range in the unit of the field. */
  readonly range: readonly [low: number, high: number] | null;
  readonly choices: readonly string[];
  readonly optional: boolean;
  /** Shown only where another field has one of these values. */
  readonly when: { readonly path: string; readonly values: readonly string[] } | null;
  readonly group: string;
}

type Extra = Partial<Pick<EquipmentField, 'optional' | 'when' | 'help'>>;

/** Writes the fields of one group, so that tables of fields stay readable. */
export function fieldGroup(group: string, shared: Extra = {}) {
  const make = (row: Partial<EquipmentField> & Pick<EquipmentField, 'path' | 'label' | 'form'>): EquipmentField => ({
    unit: '',
    help: '',
    range: null,
    choices: [],
    optional: false,
    when: null,
    group,
    ...shared,
    ...row,
  });
  type Named = readonly [path: string, label: string, help: string];
  return {
    text: ([path, label, help]: Named, extra: Extra = {}) => make({ path, label, help, form: 'text', ...extra }),
    texts: ([path, label, help]: Named, extra: Extra = {}) => make({ path, label, help, form: 'texts', ...extra }),
    flag: ([path, label, help]: Named, extra: Extra = {}) => make({ path, label, help, form: 'yes or no', ...extra }),
    coupling: ([path, label, help]: Named, extra: Extra = {}) =>
      make({ path, label, help, form: 'coupling', choices: COUPLINGS, ...extra }),
    choice: ([path, label, help]: Named, { of, ...extra }: Extra & { readonly of: readonly string[] }) =>
      make({ path, label, help, form: 'choice', choices: of, ...extra }),
    choices: ([path, label, help]: Named, { of, ...extra }: Extra & { readonly of: readonly string[] }) =>
      make({ path, label, help, form: 'choices', choices: of, ...extra }),
    number: ([path, label, help]: Named, { unit, range, ...extra }: Extra & Measured) =>
      make({ path, label, help, form: 'number', unit, range, ...extra }),
    count: ([path, label, help]: Named, { range, ...extra }: Extra & Pick<Measured, 'range'>) =>
      make({ path, label, help, form: 'count', range, ...extra }),
    special: (form: 'sockets' | 'curve', [path, label, help]: Named, extra: Extra & { readonly unit: string }) =>
      make({ path, label, help, form, ...extra }),
  };
}

interface Measured {
  readonly unit: string;
  readonly range: readonly [low: number, high: number];
}

/** `square 20 male`, `house spline 22 female` and so on: size and form in the words of the size, then which half it is. */
const COUPLINGS: readonly string[] = Object.entries(COUPLING_SIZES).flatMap(([form, sizes]) =>
  sizes.flatMap((size) =>
    ['male', 'female'].map((gender) => `${form === 'square' ? `square ${size}` : size} ${gender}`),
  ),
);
