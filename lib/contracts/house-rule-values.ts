/*
 * What each kind of house rule is given: one of some words, or a number with its unit; and how it reads to begin with.
 * Invariant: every kind has its row; a value that its kind cannot read is refused with what may be written.
 * Not here: what a rule decides (lib/rules/house*.ts).
 * Read next: house.ts.
 */
import { HOUSE_RULE_KINDS, type HouseRuleKind, POWER_SOURCES } from '#lib/duty/site.ts';
import { DUTY_CLASSES } from '#lib/equipment/drive.ts';
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { ADAPTER_KINDS, HEAD_KINDS } from './equipment-parts.ts';
import { SITE_NEEDS } from './equipment-supports.ts';

export interface RuleKindSpec {
  readonly kind: HouseRuleKind;
  readonly label: string;
  readonly help: string;
  /** Words to choose from; empty where a number is written. */
  readonly choices: readonly string[];
  readonly number: { readonly unit: string; readonly low: number; readonly high: number } | null;
  /** A sentence to begin with; `…` stands for the value. */
  readonly sentence: string;
}

/** Anchors that a rule may name: those that restraints use, and those that none should. */
const ANCHORS = ['pipework', 'handrail', 'scaffold', 'cable tray', 'small pipe', ...SITE_NEEDS] as const;

type Row = Omit<RuleKindSpec, 'kind'>;

const chosen = (row: Omit<Row, 'number'>): Row => ({ ...row, number: null });
const counted = (row: Omit<Row, 'choices'>): Row => ({ ...row, choices: [] });

const ROWS: Readonly<Record<HouseRuleKind, Row>> = {
  'no-source': chosen({
    label: 'No drive of a power source',
    help: 'Drives of this source are left out everywhere.',
    choices: POWER_SOURCES,
    sentence: 'No … drive is sent out.',
  }),
  'largest-class': chosen({
    label: 'Largest class of drive',
    help: 'Drives of a heavier duty class are left out.',
    choices: DUTY_CLASSES,
    sentence: 'No drive above the … class is sent out.',
  }),
  'no-head-kind': chosen({
    label: 'No head of a kind',
    help: 'Heads of this kind are left out.',
    choices: HEAD_KINDS,
    sentence: 'No … head is sent out.',
  }),
  'no-adapter-kind': chosen({
    label: 'No adapter of a kind',
    help: 'Adapters of this kind are left out.',
    choices: ADAPTER_KINDS,
    sentence: 'No … is sent out.',
  }),
  'no-restraint-kind': chosen({
    label: 'No restraint of a kind',
    help: 'Restraints of this kind are left out.',
    choices: RESTRAINT_KINDS,
    sentence: 'No … is sent out.',
  }),
  'no-restraint-to': chosen({
    label: 'No restraint to an anchor',
    help: 'A restraint that would be held by this anchor is left out. Pipework means large pipe and flanges.',
    choices: ANCHORS,
    sentence: 'No restraint is anchored to ….',
  }),
  'no-chain-to': chosen({
    label: 'No chain to an anchor',
    help: 'A reaction arm with chain that would be held by this anchor is left out; a strap or a fixed bar may stay.',
    choices: ANCHORS,
    sentence: 'No chain is laid around ….',
  }),
  'always-limiter': chosen({
    label: 'Always a torque limiter',
    help: 'Every chain has a torque limiter, in the drive or as a part, also where the valve could bear the drive at stall.',
    choices: ['yes'],
    sentence: 'A torque limiter is in every chain.',
  }),
  'counter-above-turns': counted({
    label: 'A turns counter above some turns',
    help: 'A stroke that may take more turns than this has a turns counter. Long strokes have one anyway.',
    number: { unit: 'turns', low: 1, high: 1000 },
    sentence: 'Strokes of more than … turns are counted with a turns counter.',
  }),
  'no-lithium-by': chosen({
    label: 'No lithium packs by a way of transport',
    help: 'Where the site is reached this way, everything with lithium packs is left out.',
    choices: ['air', 'sea', 'road'],
    sentence: 'No lithium packs go by ….',
  }),
  'persons-at-every-valve': counted({
    label: 'Persons at every valve',
    help: 'A crew of fewer persons works no valve.',
    number: { unit: 'persons', low: 1, high: 12 },
    sentence: '… persons at every valve.',
  }),
  'max-lift': counted({
    label: 'Heaviest piece',
    help: 'A part that has more mass than this is left out.',
    number: { unit: 'kg', low: 1, high: 500 },
    sentence: 'No piece has more than ….',
  }),
  'max-sound': counted({
    label: 'Loudest drive',
    help: 'A drive whose declared sound pressure at the operator is higher is left out.',
    number: { unit: 'dB', low: 50, high: 130 },
    sentence: 'No drive is louder than ….',
  }),
  'max-vibration': counted({
    label: 'Strongest vibration at the handle',
    help: 'A drive whose declared vibration is higher is left out.',
    number: { unit: 'm/s²', low: 0.5, high: 40 },
    sentence: 'No drive shakes the hands with more than ….',
  }),
};

export const RULE_KIND_SPECS: readonly RuleKindSpec[] = HOUSE_RULE_KINDS.map((kind) => ({ kind, ...ROWS[kind] }));

/** What is wrong with the value of a rule, as a sentence goes on after its name; null where it can be read. */
export function wrongRuleValue(rule: { readonly kind: HouseRuleKind; readonly value: string }): string | null {
  const { choices, number } = ROWS[rule.kind];
  const value = rule.value.trim().toLowerCase();
  if (number === null) return choices.includes(value) ? null : `is none of ${choices.join(', ')}`;
  const [, digits, unit = ''] = /^(\d+(?:\.\d+)?)\s*(\S*)$/.exec(value) ?? [];
  const amount = Number(digits);
  const fits = digits !== undefined && amount >= number.low && amount <= number.high;
  if (fits && (unit === '' || unit === number.unit.toLowerCase())) return null;
  return `is not a number of ${number.unit} from ${number.low} to ${number.high}`;
}
