/*
 * Chargers and spare packs of a crew: what its drives draw from their packs in a shift, and what recharges meanwhile.
 * Invariant: only a charger that the crew really has recharges; what the head and the drive lose is drawn from the pack too.
 * Not here: hoses, filters and cans (accessories.ts).
 * Read next: ../planning/carry-kits.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import { coldShare, drawnFromStore, packsPerShift } from '#lib/engineering/energy.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { BatteryStore } from '#lib/equipment/drive.ts';
import type { AccessoryModel, DriveModel } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { celsius, joules, type Seconds, seconds, wattHours } from '#lib/units/quantity.ts';
import { fitsPart } from '../chain/reactions.ts';
import type { StockByRole } from '../stock-by-role.ts';

interface PackWork {
  readonly drives: readonly DriveModel[];
  readonly work: readonly { readonly assembly: Assembly; readonly qty: number }[];
  readonly time: Seconds;
  readonly site: Site;
  readonly stock: StockByRole;
  readonly free: (number: string) => number;
}

interface Battery {
  readonly number: string;
  readonly power: BatteryStore;
}

/** Drives that take the same pack share packs and one charger over a shift; packs of two kinds do not share a charger. */
export function batteryNeeds(at: PackWork): readonly ItemNeed[] {
  const chargers = new Map<string, number>();
  const packs = batteriesByPack(at.drives).flatMap(([packNumber, batteries]): readonly ItemNeed[] => {
    const charger = chargerFor(at, packNumber);
    const before = charger === null ? 0 : (chargers.get(charger.number) ?? 0);
    if (charger !== null) chargers.set(charger.number, before + 1);
    const recharges = charger !== null && at.free(charger.number) > before;
    const spare = sparePacks(at, { batteries, chargers: recharges ? 1 : 0 });
    const isKnown = at.stock.accessories.some((accessory) => accessory.number === packNumber);
    return spare > 0 && isKnown ? [{ item: packNumber, count: spare }] : [];
  });
  return [...[...chargers].map(([item, count]) => ({ item, count })), ...packs];
}

/** By the pack's number, so that it is told in the same order who gets a charger that is short. */
function batteriesByPack(drives: readonly DriveModel[]): readonly (readonly [string, readonly Battery[]])[] {
  const groups = new Map<string, Battery[]>();
  for (const { number, facts } of drives) {
    if (facts.power.kind !== 'battery') continue;
    const known = groups.get(facts.power.packNumber) ?? [];
    groups.set(facts.power.packNumber, [...known, { number, power: facts.power }]);
  }
  return [...groups].toSorted(([one], [other]) => (one < other ? -1 : 1));
}

function chargerFor({ stock, site }: PackWork, packNumber: string): AccessoryModel | null {
  return (
    stock.accessories.find(
      (accessory) =>
        accessory.facts.kind === 'charger' &&
        fitsPart(accessory, packNumber) &&
        accessory.facts.mainsVoltage === site.mainsVoltage &&
        accessory.facts.mainsPlug === site.mainsPlug,
    ) ?? null
  );
}

/** Packs for a shift beyond those that come with the drives: a crew works full shifts until its work is done. */
function sparePacks(
  { work, time, site, stock }: PackWork,
  { batteries, chargers }: { readonly batteries: readonly Battery[]; readonly chargers: number },
): number {
  const shift = seconds(site.shiftHours * 3600);
  const drawn = batteries.map(({ number, power }) =>
    work
      .filter(({ assembly }) => assembly.parts.drive === number)
      .reduce((sum, { assembly, qty }) => {
        const head = stock.heads.find((one) => one.number === assembly.parts.head);
        invariant(head !== undefined, `The catalogue has no head ${assembly.parts.head}.`);
        const { energyPerVisit } = assembly.figures;
        const efficiencies = [head.facts.efficiency.low, power.efficiency];
        return sum + drawnFromStore({ work: joules(energyPerVisit * qty), efficiencies });
      }, 0),
  );
  const perShift = drawn.reduce((sum, energy) => sum + energy, 0) / Math.max(1, time / shift);
  const cold = coldShare(celsius(site.temperature?.low ?? 20));
  const nominal = Math.min(...batteries.map(({ power }) => power.voltage * power.capacity_ah));
  const usable = nominal * WORKING_CONSTANTS.packShare * cold;
  if (usable <= 0) return 0;
  const packs = packsPerShift({
    energyPerShift: wattHours(perShift),
    usablePerPack: wattHours(usable),
    shift,
    rechargeTime: seconds(Math.max(...batteries.map(({ power }) => power.rechargeTime))),
    chargers,
  });
  return packs - batteries.reduce((sum, { power }) => sum + power.packsIncluded, 0);
}
