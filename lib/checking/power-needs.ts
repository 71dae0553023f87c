/*
 * What it takes to run the drives of a crew, worked out a second time: chargers and packs, hoses and filters, cans and arresters.
 * Invariant: drives that take the same pack draw on the same packs, so their work adds up before packs are counted.
 * Not here: the parts of the assemblies (crew-needs.ts).
 * Read next: crew-needs.ts.
 */
import { needsCutOff } from '#lib/engineering/air-supply.ts';
import { coldShare, packsPerShift } from '#lib/engineering/energy.ts';
import type { AirSupply, BatteryStore } from '#lib/equipment/drive.ts';
import type { AccessoryModel, DriveModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { celsius, seconds, wattHours } from '#lib/units/quantity.ts';
import type { Counts, CrewNeedsInput, CrewPiece } from './crew-work.ts';

interface PowerInput extends CrewNeedsInput {
  /** By rising number: of several that fit, the first is taken. */
  readonly accessories: readonly AccessoryModel[];
}

interface Driven {
  readonly drive: DriveModel;
  readonly pieces: readonly CrewPiece[];
}

export function powerNeeds(input: PowerInput): readonly Counts[] {
  const driven = [...new Set(input.pieces.map(({ assembly }) => assembly.parts.drive))].flatMap((number) => {
    const drive = input.models.find((model) => model.number === number);
    if (drive?.role !== 'drive') return [];
    return [{ drive, pieces: input.pieces.filter(({ assembly }) => assembly.parts.drive === number) }];
  });
  return [...packNeeds(input, driven), ...driven.flatMap((one) => driveNeeds(input, one))];
}

/** What goes with one drive; packs are counted over all drives that share them. */
function driveNeeds(input: PowerInput, one: Driven): readonly Counts[] {
  const { power } = one.drive.facts;
  const first = (kind: AccessoryModel['facts']['kind']) => fitting(input, { kind, number: one.drive.number });
  switch (power.kind) {
    case 'battery':
      return [];
    case 'air':
      return [
        ...hoses(input, power),
        ...first(hasOxygen(one) ? 'dry filter-regulator' : 'filter-regulator-lubricator'),
      ];
    case 'petrol':
      return [...first('fuel can'), ...first('flame arrester')];
  }
}

const hasOxygen = ({ pieces }: Driven): boolean => pieces.some(({ oxygen }) => oxygen);

function fitting(
  { accessories }: PowerInput,
  { kind, number }: { readonly kind: AccessoryModel['facts']['kind']; readonly number: string },
): readonly Counts[] {
  const found = accessories.find(({ facts }) => facts.kind === kind && suits(facts.fits, number));
  return found === undefined ? [] : [new Map([[found.number, 1]])];
}

const suits = (fits: readonly string[], number: string): boolean => fits.length === 0 || fits.includes(number);

/** Batteries of a crew, drive by drive, with the work at the valve that each is used for. */
interface Battery {
  readonly power: BatteryStore;
  readonly work: number;
}

function packNeeds(input: PowerInput, driven: readonly Driven[]): readonly Counts[] {
  const batteries = driven.flatMap(({ drive, pieces }): readonly Battery[] => {
    const { power } = drive.facts;
    const work = pieces.reduce((sum, { assembly, qty }) => sum + assembly.figures.energyPerVisit * qty, 0);
    return power.kind === 'battery' ? [{ power, work }] : [];
  });
  return [...new Set(batteries.map(({ power }) => power.packNumber))].flatMap((pack) => {
    const charger = input.accessories.find(
      ({ facts }) =>
        facts.kind === 'charger' &&
        suits(facts.fits, pack) &&
        facts.mainsVoltage === input.site.mainsVoltage &&
        facts.mainsPlug === input.site.mainsPlug,
    );
    const sharing = batteries.filter(({ power }) => power.packNumber === pack);
    const spare = packsFor(input, { sharing, chargers: charger === undefined ? 0 : 1 });
    return [
      ...(charger === undefined ? [] : [new Map([[charger.number, 1]])]),
      ...(spare > 0 && input.accessories.some(({ number }) => number === pack) ? [new Map([[pack, spare]])] : []),
    ];
  });
}

/** Packs for a shift of evenly spread days, less those that come with the drives. */
function packsFor(
  { site }: PowerInput,
  { sharing, chargers }: { readonly sharing: readonly Battery[]; readonly chargers: number },
): number {
  const days = Math.max(1, site.days);
  const drawn = sharing.reduce((sum, { power, work }) => sum + work / power.efficiency / 3600 / days, 0);
  const nominal = Math.min(...sharing.map(({ power }) => power.voltage * power.capacity_ah));
  const gives = nominal * WORKING_CONSTANTS.packShare * coldShare(celsius(site.temperature?.low ?? 20));
  if (!(gives > 0)) return 0;
  const packs = packsPerShift({
    energyPerShift: wattHours(drawn),
    usablePerPack: wattHours(gives),
    shift: seconds(site.shiftHours * 3600),
    rechargeTime: seconds(Math.max(...sharing.map(({ power }) => power.rechargeTime))),
    chargers,
  });
  return packs - sharing.reduce((sum, { power }) => sum + power.packsIncluded, 0);
}

/** The thinnest hose that is wide enough, the longest of these; as many as reach from the outlet to the tool. */
function hoses(input: PowerInput, power: AirSupply): readonly Counts[] {
  const wide = input.accessories.filter(
    ({ facts }) => facts.kind === 'air hose' && (facts.hoseBore ?? 0) >= power.hoseBore - 1e-4,
  );
  const thinnest = Math.min(...wide.map(({ facts }) => facts.hoseBore ?? 0));
  const thin = wide.filter(({ facts }) => (facts.hoseBore ?? 0) === thinnest);
  const longest = Math.max(...thin.map(({ facts }) => facts.hoseLength ?? 0));
  const hose = thin.find(({ facts }) => (facts.hoseLength ?? 0) === longest);
  const reach = WORKING_CONSTANTS.hoseLength;
  const lengths = hose === undefined ? 0 : Math.ceil(reach / (hose.facts.hoseLength ?? reach));
  const held = lengths > 0 || needsCutOff(power.hoseBore);
  const restraint = input.accessories.find(({ facts }) => facts.kind === 'hose restraint');
  return [
    ...(hose === undefined ? [] : [new Map([[hose.number, lengths]])]),
    ...(held && restraint !== undefined ? [new Map([[restraint.number, Math.max(1, lengths)]])] : []),
  ];
}
