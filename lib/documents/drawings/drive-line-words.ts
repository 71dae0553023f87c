/*
 * What a drive line shows and says: the parts looked up by number, and the words of every call-out.
 * Invariant: a part that is not in the catalogue given is still named by its number.
 * Not here: shapes and positions.
 * Read next: drive-line.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type {
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  Model,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';
import { formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { CallOut } from './drive-line-scene.ts';
import { chainNumbers } from './part-numbers.ts';
import { point } from './shapes.ts';

export interface DriveLineSubject {
  readonly assembly: Assembly;
  readonly models: readonly Model[];
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly system: UnitSystem;
  /** Its lettering in another language; as it is where it is absent. */
  readonly tell?: (words: string) => string;
}

type Words = Pick<CallOut, 'title' | 'detail'>;

export interface ChainParts {
  readonly drive: DriveModel | undefined;
  readonly head: HeadModel | undefined;
  readonly adapter: AdapterModel | undefined;
  readonly extensions: readonly ExtensionModel[];
  readonly restraint: RestraintModel | undefined;
  readonly limitersAfterDrive: readonly OptionModel[];
  readonly limitersAfterHead: readonly OptionModel[];
  readonly counters: readonly OptionModel[];
  readonly secondChain: boolean;
  readonly keyGuide: boolean;
  /** How far the part above a joint leans in the picture. [°] */
  readonly lean: number;
  readonly energyWords: Words;
  readonly words: (model: Model) => Words;
}

export function chainParts(subject: DriveLineSubject): ChainParts {
  const { assembly, models } = subject;
  const { parts } = assembly;
  const find = (number: string) => models.find((model) => model.number === number);
  const drive = find(parts.drive);
  const head = find(parts.head);
  const adapter = parts.adapters.map(find).find((model) => model !== undefined);
  const restraint = find(parts.restraint);
  const options = parts.options.map(find).filter((model): model is OptionModel => model?.role === 'option');
  const limiters = options.filter((option) => option.facts.kind === 'torque limiter');
  const accessories = parts.accessories.map((accessory) => find(accessory.number));
  const driveModel = drive?.role === 'drive' ? drive : undefined;
  return {
    drive: driveModel,
    head: head?.role === 'head' ? head : undefined,
    adapter: adapter?.role === 'adapter' ? adapter : undefined,
    extensions: parts.extensions.map(find).filter((model): model is ExtensionModel => model?.role === 'extension'),
    restraint: restraint?.role === 'restraint' ? restraint : undefined,
    limitersAfterDrive: limiters.filter((option) => option.facts.sits !== 'after head'),
    limitersAfterHead: limiters.filter((option) => option.facts.sits === 'after head'),
    counters: options.filter((option) => option.facts.kind === 'turns counter'),
    secondChain: accessories.some((model) => model?.role === 'accessory' && model.facts.kind === 'second chain'),
    keyGuide: accessories.some((model) => model?.role === 'accessory' && model.facts.kind === 'key guide'),
    lean: Math.min(24, Math.max(9, Number(subject.line.place.misalignment?.nominal ?? 12))),
    energyWords: energyWords(driveModel, subject),
    words: (model) => partWords(subject, model),
  };
}

export function partCall(subject: DriveLineSubject, model: Model): Words {
  return partWords(subject, model);
}

const ROLE_NAMES: Readonly<Record<Model['role'], string>> = {
  drive: 'Drive',
  head: 'Head',
  adapter: 'Adapter',
  extension: 'Extension',
  restraint: 'Restraint',
  option: 'Option',
  accessory: 'Accessory',
};

function partWords(subject: DriveLineSubject, model: Model): Words {
  const role =
    model.role === 'extension' && model.facts.kind === 'universal joint'
      ? 'Joint'
      : model.role === 'option'
        ? model.facts.kind === 'torque limiter'
          ? 'Limiter'
          : 'Counter'
        : ROLE_NAMES[model.role];
  const others =
    model.role === 'adapter' ? subject.assembly.parts.adapters.filter((number) => number !== model.number) : [];
  const also = others.length > 0 ? `; also carried for the range: ${others.join(', ')}` : '';
  const gear = model.role === 'drive' ? gearWords(model, subject.assembly.parts.gear) : '';
  return { title: `${role} ${model.number}`, detail: `${model.name}${gear}${also}` };
}

function gearWords(drive: DriveModel, gear: number): string {
  const chosen = drive.facts.gears[gear];
  return chosen === undefined || drive.facts.gears.length < 2 ? '' : `; set to ${chosen.name} gear`;
}

function energyWords(drive: DriveModel | undefined, subject: DriveLineSubject): Words {
  if (drive === undefined) return { title: 'Power source', detail: '' };
  const { power } = drive.facts;
  const spare = subject.assembly.parts.accessories.find(
    (accessory) => power.kind === 'battery' && accessory.number === power.packNumber,
  );
  switch (power.kind) {
    case 'battery':
      return {
        title: `Pack ${power.packNumber}`,
        detail: `${formatQuantity({ value: power.voltage, unit: 'V', system: subject.system })}, ${power.capacity_ah} Ah; ${power.packsIncluded} with the drive${spare === undefined ? '' : `, ${spare.count} spare`}`,
      };
    case 'air':
      return {
        title: 'Air supply',
        detail: `${formatQuantity({ value: power.ratedPressure, unit: 'Pa', system: subject.system })} at the tool; hose bore at least ${formatQuantity({ value: power.hoseBore, unit: 'm', system: subject.system })}; hose restrained at both ends`,
      };
    case 'petrol':
      return { title: 'Petrol engine', detail: 'Open air only; refuel cold, away from the valve' };
  }
}

export function valveKind(subject: DriveLineSubject, parts: ChainParts): 'wheel' | 'nut' | 'buried' {
  const depth = Number(subject.duty.grip.depthToNut?.nominal ?? 0);
  if (parts.adapter?.facts.wheel !== undefined && parts.adapter.facts.sockets === undefined) return 'wheel';
  if (subject.duty.grip.kind === 'wheel') return 'wheel';
  return depth >= 0.3 ? 'buried' : 'nut';
}

export function gripCall(subject: DriveLineSubject, kind: 'wheel' | 'nut' | 'buried'): CallOut {
  const { grip } = subject.duty;
  const { system } = subject;
  const size =
    subject.line.size === undefined
      ? ''
      : `${subject.line.valveType?.value ?? 'valve'}, ${formatQuantity({ value: subject.line.size.nominal, unit: 'm', system: 'si' }).replace(/ mm$/, '').replace(/^/, 'DN ')}; `;
  if (kind === 'wheel') {
    const wheel =
      grip.wheelDiameter === undefined
        ? 'handwheel, size not known'
        : `handwheel ${formatRange(grip.wheelDiameter, system)} (${grip.wheelDiameter.basis})`;
    const spokes =
      grip.wheelSpokes === undefined
        ? ''
        : `, ${grip.wheelSpokes.low === grip.wheelSpokes.high ? grip.wheelSpokes.low : `${grip.wheelSpokes.low} to ${grip.wheelSpokes.high}`} spokes`;
    const dish =
      grip.wheelDish !== undefined && grip.wheelDish.nominal >= 5
        ? `, dished ${formatRange(grip.wheelDish, system)}`
        : '';
    return {
      title: `Valve ${subject.line.tag}`,
      detail: `${size}${wheel}${spokes}${dish}`,
      at: point(46, (grip.wheelDish?.nominal ?? 0) >= 5 ? -10 : 2),
      side: 'right',
    };
  }
  const nuts =
    grip.nutSizes === undefined || grip.nutSizes.length === 0
      ? 'size not known'
      : grip.nutSizes.map((nut) => formatRange(nut, system)).join(' or ');
  return {
    title: `Valve ${subject.line.tag}`,
    detail: `${size}${grip.nutShape ?? 'nut'} ${nuts}`,
    at: point(7, 8),
    side: 'right',
  };
}

export function remarkCalls(subject: DriveLineSubject, kind: 'wheel' | 'nut' | 'buried'): readonly CallOut[] {
  const { duty, line, system } = subject;
  const calls: CallOut[] = [];
  const facing = kind === 'wheel' ? 'facing the wheel' : 'facing the nut';
  const closes =
    duty.closes === 'unknown'
      ? { title: 'Closing direction not known', detail: 'Try gently by hand first' }
      : { title: `Closes ${duty.closes}`, detail: `seen ${facing}` };
  calls.push({
    ...closes,
    at:
      kind === 'buried'
        ? point(-7, 10)
        : point(duty.closes === 'anticlockwise' ? -22 : 22, duty.closes === 'unknown' ? 14 : 33),
    side: kind === 'buried' ? 'left' : 'right',
  });
  if (kind === 'buried') {
    if (duty.grip.depthToNut !== undefined)
      calls.push({
        title: `Nut ${formatRange(duty.grip.depthToNut, system)} down`,
        detail: `from the surface, ${duty.grip.depthToNut.basis}`,
        at: point(60, -40),
        side: 'right',
      });
    calls.push({
      title: 'Surface box',
      detail: line.place.surfaceBox?.value ?? 'state not known: open and clear first',
      at: point(36, -116),
      side: 'right',
    });
  }
  if (duty.grip.stemRisesThroughWheel !== 'no' && kind === 'wheel') {
    const rise =
      duty.grip.stemProtrusion === undefined
        ? 'height not known'
        : `stands up to ${formatQuantity({ value: duty.grip.stemProtrusion.high, unit: 'm', system })} above the wheel`;
    calls.push({
      title: duty.grip.stemRisesThroughWheel === 'maybe' ? 'Stem may rise through' : 'Stem rises through',
      detail: rise,
      at: point(0, 28),
      side: 'left',
    });
  }
  return calls;
}

/** Lines under the picture. */
export function setUpNote(subject: DriveLineSubject, parts: ChainParts): readonly string[] {
  const notes = ['Side view, not to scale. Equipment in tone, valve and place in grey.'];
  const missing = chainNumbers(subject.assembly).filter(
    (number) => !subject.models.some((model) => model.number === number),
  );
  if (missing.length > 0)
    notes.push(`Not drawn because the catalogue given does not hold them: ${missing.join(', ')}.`);
  const carried = subject.assembly.parts.accessories.map((accessory) => {
    const model = subject.models.find((candidate) => candidate.number === accessory.number);
    return `${accessory.count} × ${accessory.number}${model === undefined ? '' : ` ${model.name}`}`;
  });
  if (carried.length > 0) notes.push(`Also with it: ${carried.join('; ')}.`);
  if (subject.line.place.faces?.value === 'side' || subject.line.place.faces?.value === 'down')
    notes.push(
      'The wheel does not face up: hold the drive up with a sling or support and secure it against falling off.',
    );
  if (parts.restraint === undefined) notes.push('No restraint is drawn: never hold a powered drive by hand alone.');
  return notes;
}
