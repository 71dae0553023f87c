/*
 * What a crew carries besides the chains: chargers for the place, spare packs for the shift, hoses, filters, fuel cans, lanyards.
 * Invariant: only models of the catalogue that fit are named; what is missing there is left to the rules' notes.
 * Not here: accessories of one chain (chain-accessories.ts).
 * Read next: chain-accessories.ts.
 */

import type { Site } from '#lib/duty/site.ts';
import { needsCutOff } from '#lib/engineering/air-supply.ts';
import { coldShare, packsPerShift } from '#lib/engineering/energy.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { AirSupply, BatteryStore } from '#lib/equipment/drive.ts';
import type { AccessoryModel, DriveModel, Model } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { celsius, seconds, wattHours } from '#lib/units/quantity.ts';
import { fitsPart } from './reactions.ts';
import { type StockByRole, stockByRole } from './stock-by-role.ts';

export interface CrewWork {
  readonly assembly: Assembly;
  readonly qty: number;
}

export interface CrewAccessoriesInput {
  readonly work: readonly CrewWork[];
  readonly site: Site;
  readonly models: readonly Model[];
}

export function crewAccessories({ work, site, models }: CrewAccessoriesInput): readonly ItemNeed[] {
  const stock = stockByRole(models);
  const drives = stock.drives.filter((drive) => work.some(({ assembly }) => assembly.parts.drive === drive.number));
  const needs = [
    ...drives.flatMap((drive) => accessoriesOf({ drive, work, site, stock })),
    ...batteriesByPack(drives).flatMap((batteries) => batteryNeeds({ batteries, work, site, stock })),
  ];
  const lanyard = stock.accessories.find((accessory) => accessory.facts.kind === 'lanyards');
  return largestOfEach(
    drives.length > 0 && lanyard !== undefined ? [...needs, { item: lanyard.number, count: 1 }] : needs,
  );
}

interface DriveWork {
  readonly drive: DriveModel;
  readonly work: readonly CrewWork[];
  readonly site: Site;
  readonly stock: StockByRole;
}

function accessoriesOf(at: DriveWork): readonly ItemNeed[] {
  const { power } = at.drive.facts;
  switch (power.kind) {
    case 'battery':
      return [];
    case 'air':
      return airNeeds(at, power);
    case 'petrol':
      return [...first(at, 'fuel can'), ...first(at, 'flame arrester')];
  }
}

interface Battery {
  readonly number: string;
  readonly power: BatteryStore;
}

/** Drives that take the same pack share packs and charger over a shift. */
interface BatteryWork extends Omit<DriveWork, 'drive'> {
  readonly batteries: readonly [Battery, ...Battery[]];
}

function batteriesByPack(drives: readonly DriveModel[]): readonly BatteryWork['batteries'][] {
  const groups = new Map<string, BatteryWork['batteries']>();
  for (const { number, facts } of drives) {
    if (facts.power.kind !== 'battery') continue;
    const battery = { number, power: facts.power };
    const known = groups.get(facts.power.packNumber);
    groups.set(facts.power.packNumber, known === undefined ? [battery] : [...known, battery]);
  }
  return [...groups.values()];
}

function batteryNeeds(at: BatteryWork): readonly ItemNeed[] {
  const { packNumber } = at.batteries[0].power;
  const charger = at.stock.accessories.find(
    (accessory) =>
      accessory.facts.kind === 'charger' &&
      fitsPart(accessory, packNumber) &&
      accessory.facts.mainsVoltage === at.site.mainsVoltage &&
      accessory.facts.mainsPlug === at.site.mainsPlug,
  );
  const spare = sparePacks(at, charger === undefined ? 0 : 1);
  return [
    ...(charger === undefined ? [] : [{ item: charger.number, count: 1 }]),
    ...(spare > 0 && at.stock.accessories.some((accessory) => accessory.number === packNumber)
      ? [{ item: packNumber, count: spare }]
      : []),
  ];
}

/** Packs for the busiest shift beyond those that come with the drives, taking the crew's work as spread evenly over the days. */
function sparePacks({ batteries, work, site }: BatteryWork, chargers: number): number {
  const electrical = batteries.map(({ number, power }) => {
    const mine = work.filter(({ assembly }) => assembly.parts.drive === number);
    return mine.reduce((sum, { assembly, qty }) => sum + assembly.figures.energyPerVisit * qty, 0) / power.efficiency;
  });
  const perShift = electrical.reduce((sum, joules) => sum + joules, 0) / 3600 / Math.max(1, site.days);
  const cold = coldShare(celsius(site.temperature?.low ?? 20));
  const nominal = Math.min(...batteries.map(({ power }) => power.voltage * power.capacity_ah));
  const usable = nominal * WORKING_CONSTANTS.packShare * cold;
  if (usable <= 0) return 0;
  const packs = packsPerShift({
    energyPerShift: wattHours(perShift),
    usablePerPack: wattHours(usable),
    shift: seconds(site.shiftHours * 3600),
    rechargeTime: seconds(Math.max(...batteries.map(({ power }) => power.rechargeTime))),
    chargers,
  });
  return packs - batteries.reduce((sum, { power }) => sum + power.packsIncluded, 0);
}

function airNeeds(at: DriveWork, power: AirSupply): readonly ItemNeed[] {
  const hoses = at.stock.accessories
    .filter(
      (accessory) => accessory.facts.kind === 'air hose' && (accessory.facts.hoseBore ?? 0) >= power.hoseBore - 1e-4,
    )
    .toSorted(
      (a, b) =>
        (a.facts.hoseBore ?? 0) - (b.facts.hoseBore ?? 0) || (b.facts.hoseLength ?? 0) - (a.facts.hoseLength ?? 0),
    );
  const hose = hoses[0];
  const lengths =
    hose === undefined
      ? 0
      : Math.ceil(WORKING_CONSTANTS.hoseLength / (hose.facts.hoseLength ?? WORKING_CONSTANTS.hoseLength));
  const filters: AccessoryModel['facts']['kind'] = needsDryAir(at)
    ? 'dry filter-regulator'
    : 'filter-regulator-lubricator';
  const restraint = needsCutOff(power.hoseBore) || lengths > 0 ? first(at, 'hose restraint') : [];
  return [
    ...(hose === undefined ? [] : [{ item: hose.number, count: lengths }]),
    ...restraint.map((need) => ({ ...need, count: Math.max(1, lengths) })),
    ...first(at, filters),
  ];
}

/** Oxygen service takes no lubricated air; the assembly carries the finding. */
function needsDryAir({ work, drive }: DriveWork): boolean {
  return work.some(
    ({ assembly }) =>
      assembly.parts.drive === drive.number && assembly.findings.some((finding) => finding.id === 'oxygen-clean'),
  );
}

function first({ stock, drive }: DriveWork, kind: AccessoryModel['facts']['kind']): readonly ItemNeed[] {
  const found = stock.accessories.find(
    (accessory) => accessory.facts.kind === kind && fitsPart(accessory, drive.number),
  );
  return found === undefined ? [] : [{ item: found.number, count: 1 }];
}

function largestOfEach(needs: readonly ItemNeed[]): readonly ItemNeed[] {
  const counts = new Map<string, number>();
  for (const { item, count } of needs) counts.set(item, Math.max(counts.get(item) ?? 0, count));
  return [...counts].map(([item, count]) => ({ item, count }));
}
