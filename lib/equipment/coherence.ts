/*
 * Whether a catalogue hangs together: couplings that join nothing, drives without restraint, heads too weak, packs, chargers and hoses that are missing.
 * Invariant: looks at facts only; each warning is a whole sentence that names the model and what would put it right.
 * Not here: what fits a valve (lib/rules) and single facts (contracts).
 * Read next: coupling.ts.
 */
import { type Coupling, joins } from './coupling.ts';
import type { AccessoryModel, DriveModel, HeadModel, Model, RestraintModel } from './model.ts';

export interface CoherenceWarning {
  readonly number: string;
  readonly sentence: string;
}

export function checkCoherence(models: readonly Model[]): readonly CoherenceWarning[] {
  const all: Catalogue = { models, ends: models.flatMap(endsOf) };
  return models.flatMap((model) =>
    [...looseEnds(all, model), ...warningsOf(all, model), ...rateWarnings(model)].map((sentence) => ({
      number: model.number,
      sentence: `${model.number}: ${sentence}`,
    })),
  );
}

interface End {
  readonly number: string;
  readonly side: 'input' | 'output';
  readonly coupling: Coupling;
}

interface Catalogue {
  readonly models: readonly Model[];
  readonly ends: readonly End[];
}

/** Couplings of a model: what turns it goes into its input, what it turns sits at its output. */
export function endsOf(model: Model): readonly End[] {
  const { number } = model;
  const end = (side: End['side'], coupling: Coupling | undefined): readonly End[] =>
    coupling === undefined ? [] : [{ number, side, coupling }];
  switch (model.role) {
    case 'drive':
      return end('output', model.facts.output);
    case 'adapter':
      return end('input', model.facts.input);
    case 'head':
    case 'extension':
    case 'option':
      return [...end('input', model.facts.input), ...end('output', model.facts.output)];
    case 'restraint':
    case 'accessory':
      return [];
  }
}

/** Models that this one can be put on or can carry, by the end that joins. */
export function matesOf(
  models: readonly Model[],
  model: Model,
): readonly { readonly side: End['side']; readonly numbers: readonly string[] }[] {
  const ends = models.filter(({ number }) => number !== model.number).flatMap(endsOf);
  return endsOf(model).map((own) => ({
    side: own.side,
    numbers: ends
      .filter((other) => other.side !== own.side && joins(own.coupling, other.coupling))
      .map(({ number }) => number),
  }));
}

function looseEnds({ ends }: Catalogue, model: Model): readonly string[] {
  return endsOf(model)
    .filter(
      (own) =>
        !ends.some(
          (other) => other.number !== own.number && other.side !== own.side && joins(own.coupling, other.coupling),
        ),
    )
    .map(
      ({ side, coupling }) =>
        `its ${side} ${coupling.form === 'square' ? `square ${coupling.size}` : coupling.size} ${coupling.gender} joins nothing in the catalogue. Correct the coupling, or add what goes ${side === 'output' ? 'on' : 'in'} there.`,
    );
}

function warningsOf(all: Catalogue, model: Model): readonly string[] {
  switch (model.role) {
    case 'drive':
      return [...driveWarnings(all, model), ...supplyWarnings(all, model)];
    case 'head':
      return headWarnings(all, model);
    case 'restraint':
      return restraintWarnings(all, model);
    case 'accessory':
      return accessoryWarnings(all, model);
    case 'adapter':
    case 'extension':
    case 'option':
      return [];
  }
}

const isDrive = (model: Model): model is DriveModel => model.role === 'drive';
const isHead = (model: Model): model is HeadModel => model.role === 'head';
const isAccessory = (model: Model): model is AccessoryModel => model.role === 'accessory';
const isRestraint = (model: Model): model is RestraintModel => model.role === 'restraint';

const headsFor = ({ models }: Catalogue, drive: DriveModel): readonly HeadModel[] =>
  models.filter(isHead).filter((head) => joins(drive.facts.output, head.facts.input));

const stallOf = (drive: DriveModel): number => Math.max(...drive.facts.gears.map(({ stallTorque }) => stallTorque));

const atHead = (torque: number, head: HeadModel): number => torque * head.facts.ratio * head.facts.efficiency.high;

const newtonMetresText = (torque: number): string => `${Number(torque.toPrecision(3))} N·m`;

function driveWarnings(all: Catalogue, drive: DriveModel): readonly string[] {
  const restraints = all.models.filter(isRestraint);
  return headsFor(all, drive).flatMap((head) => {
    const torque = atHead(stallOf(drive), head);
    const fitting = restraints.filter(({ facts }) => facts.headKinds.includes(head.facts.kind));
    if (fitting.some(({ facts }) => facts.torqueRating >= torque)) return [];
    const strongest = Math.max(0, ...fitting.map(({ facts }) => facts.torqueRating));
    return [
      `with head ${head.number} it stalls at up to ${newtonMetresText(torque)}, and no restraint for that head bears more than ${newtonMetresText(strongest)}. That pair is never sent out until there is a stronger restraint.`,
    ];
  });
}

function headWarnings(all: Catalogue, head: HeadModel): readonly string[] {
  const drives = all.models.filter(isDrive).filter((drive) => joins(drive.facts.output, head.facts.input));
  const tooStrong = drives.filter((drive) =>
    drive.facts.gears.every(({ ratedTorque }) => atHead(ratedTorque, head) > head.facts.torqueRating),
  );
  return tooStrong.map(
    (drive) =>
      `its rating of ${newtonMetresText(head.facts.torqueRating)} is below what ${drive.number} gives through it at rated torque in every gear. That pair serves no valve; check rating, ratio and coupling.`,
  );
}

function supplyWarnings({ models }: Catalogue, drive: DriveModel): readonly string[] {
  const { power } = drive.facts;
  const accessories = models.filter(isAccessory);
  const fits = (kind: AccessoryModel['facts']['kind'], number: string): boolean =>
    accessories.some(({ facts }) => facts.kind === kind && (facts.fits.length === 0 || facts.fits.includes(number)));
  switch (power.kind) {
    case 'battery': {
      const pack = accessories.find(({ number }) => number === power.packNumber);
      return [
        ...(pack?.facts.kind === 'spare pack'
          ? []
          : [`its pack ${power.packNumber} is not in the catalogue as a spare pack. Add it, or correct the number.`]),
        ...(fits('charger', power.packNumber)
          ? []
          : [`no charger fits its pack ${power.packNumber}. Add a charger, or name the pack with one that fits.`]),
        ...(drive.lithium === undefined
          ? [
              'it says nothing of its packs’ energy, so that nobody can tell how it may be sent. Fill in energy and packs.',
            ]
          : []),
      ];
    }
    case 'air':
      return [
        ...(accessories.some(({ facts }) => facts.kind === 'air hose' && (facts.hoseBore ?? 0) >= power.hoseBore - 1e-9)
          ? []
          : [`no air hose has a bore of ${Math.round(power.hoseBore * 1000)} mm or more. Add one.`]),
        ...(fits('filter-regulator-lubricator', drive.number) || fits('dry filter-regulator', drive.number)
          ? []
          : ['no filter-regulator fits it. Add one, or name the drive with one that fits.']),
      ];
    case 'petrol':
      return fits('fuel can', drive.number)
        ? []
        : ['no fuel can fits it. Add one, or name the drive with one that fits.'];
  }
}

function restraintWarnings({ models }: Catalogue, restraint: RestraintModel): readonly string[] {
  const held = restraint.facts.kind === 'reaction arm with chain' && restraint.facts.directions === 'one way';
  const second = models
    .filter(isAccessory)
    .some(({ facts }) => facts.kind === 'second chain' && facts.fits.includes(restraint.number));
  return held && !second
    ? [
        'its chain holds one way only and no second chain names it, so that it serves no reversing work. Add a second chain that fits it.',
      ]
    : [];
}

function accessoryWarnings({ models }: Catalogue, accessory: AccessoryModel): readonly string[] {
  const known = new Set(models.map(({ number }) => number));
  const strange = accessory.facts.fits.filter((number) => !known.has(number));
  return strange.length === 0
    ? []
    : [
        `it says that it fits ${strange.join(', ')}, which is not in the catalogue. Correct the number, or take it out.`,
      ];
}

function rateWarnings({ rates, role, facts }: Model): readonly string[] {
  const sold = role === 'accessory' && facts.saleItem;
  if (sold) return [];
  return [
    ...(rates.week_minor > 7 * rates.day_minor
      ? ['a week costs more than seven days, so that the week rate is never taken.']
      : []),
    ...(rates.four_weeks_minor > 4 * rates.week_minor
      ? ['four weeks cost more than four times a week, so that the four-week rate is never taken.']
      : []),
  ];
}
