/*
 * What it takes to run the drives of a crew, worked out a second time: chargers and packs, hoses and filters, cans and arresters.
 * Invariant: drives that take the same pack draw on the same packs, so their work adds up before packs are counted; only a charger that is carried recharges.
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

/** Batteries of a crew, drive by drive, with what is drawn from their packs. */
interface Battery {
  readonly power: BatteryStore;
  /** In watt-hours. */
  readonly drawn: number;
}

function packNeeds(input: PowerInput, driven: readonly Driven[]): readonly Counts[] {
  const batteries = driven.flatMap(({ drive, pieces }): readonly Battery[] => {
    const { power } = drive.facts;
    if (power.kind !== 'battery') return [];
    const drawn = pieces.reduce((sum, piece) => sum + atPack(input, { piece, power }), 0);
    return [{ power, drawn }];
  });
  const chargers = new Map<string, number>();
  const packs = [...new Set(batteries.map(({ power }) => power.packNumber))].toSorted().flatMap((pack) => {
    const charger = chargerOf(input, pack);
    const taken = charger === undefined ? 0 : (chargers.get(charger) ?? 0);
    if (charger !== undefined) chargers.set(charger, taken + 1);
    const recharging = charger !== undefined && taken < input.has(charger);
    const sharing = batteries.filter(({ power }) => power.packNumber === pack);
    const spare = packsFor(input, { sharing, chargers: recharging ? 1 : 0 });
    return spare > 0 && input.accessories.some(({ number }) => number === pack) ? [new Map([[pack, spare]])] : [];
  });
  return [chargers, ...packs];
}

/** Drive and head lose their share of what the pack gives before it is work at the valve. */
function atPack(
  { models }: PowerInput,
  { piece, power }: { readonly piece: CrewPiece; readonly power: BatteryStore },
): number {
  const head = models.find(({ number }) => number === piece.assembly.parts.head);
  const kept = head?.role === 'head' ? head.facts.efficiency.low * power.efficiency : power.efficiency;
  return (piece.assembly.figures.energyPerVisit * piece.qty) / (3600 * kept);
}

function chargerOf({ accessories, site }: PowerInput, pack: string): string | undefined {
  return accessories.find(
    ({ facts }) =>
      facts.kind === 'charger' &&
      suits(facts.fits, pack) &&
      facts.mainsVoltage === site.mainsVoltage &&
      facts.mainsPlug === site.mainsPlug,
  )?.number;
}

/** Packs for a full shift at the crew's average draw, or for all its work where that is less, less those that come with the drives. */
function packsFor(
  { site, time }: PowerInput,
  { sharing, chargers }: { readonly sharing: readonly Battery[]; readonly chargers: number },
): number {
  const shift = site.shiftHours * 3600;
  const all = sharing.reduce((sum, { drawn }) => sum + drawn, 0);
  const drawn = time > shift ? (all * shift) / time : all;
  const nominal = Math.min(...sharing.map(({ power }) => power.voltage * power.capacity_ah));
  const gives = nominal * WORKING_CONSTANTS.packShare * coldShare(celsius(site.temperature?.low ?? 20));
  if (!(gives > 0)) return 0;
  const packs = packsPerShift({
    energyPerShift: wattHours(drawn),
    usablePerPack: wattHours(gives),
    shift: seconds(shift),
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
  const reach = WORKING_CONSTANTS.hoseReach;
  const lengths = hose === undefined ? 0 : Math.ceil(reach / (hose.facts.hoseLength ?? reach));
  const held = lengths > 0 || needsCutOff(power.hoseBore);
  const restraint = input.accessories.find(({ facts }) => facts.kind === 'hose restraint');
  return [
    ...(hose === undefined ? [] : [new Map([[hose.number, lengths]])]),
    ...(held && restraint !== undefined ? [new Map([[restraint.number, Math.max(1, lengths)]])] : []),
  ];
}
