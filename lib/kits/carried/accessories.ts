/*
 * What a crew carries besides the chains: chargers for the place, spare packs for the shift, hoses, filters, fuel cans, lanyards.
 * Invariant: only models of the catalogue that fit are named; what is missing there is left to the rules' notes.
 * Not here: accessories of one chain (chain-accessories.ts).
 * Read next: pack-needs.ts.
 */

import type { Site } from '#lib/duty/site.ts';
import { needsCutOff } from '#lib/engineering/air-supply.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { AirSupply } from '#lib/equipment/drive.ts';
import type { AccessoryModel, DriveModel, Model } from '#lib/equipment/model.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Seconds } from '#lib/units/quantity.ts';
import { fitsPart } from '../chain/reactions.ts';
import { type StockByRole, stockByRole } from '../stock-by-role.ts';
import { batteryNeeds } from './pack-needs.ts';

export interface CrewWork {
  readonly assembly: Assembly;
  readonly qty: number;
}

export interface CrewAccessoriesInput {
  readonly work: readonly CrewWork[];
  /** All the crew's work with moving and access; what is drawn from packs is spread over its shifts. */
  readonly time: Seconds;
  readonly site: Site;
  readonly models: readonly Model[];
  /** How many of an accessory this crew can have: a charger that is not there recharges nothing. */
  readonly free: (number: string) => number;
}

export function crewAccessories({ work, time, site, models, free }: CrewAccessoriesInput): readonly ItemNeed[] {
  const stock = stockByRole(models);
  const drives = stock.drives.filter((drive) => work.some(({ assembly }) => assembly.parts.drive === drive.number));
  const needs = [
    ...drives.flatMap((drive) => accessoriesOf({ drive, work, site, stock })),
    ...batteryNeeds({ drives, work, time, site, stock, free }),
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
      : Math.ceil(WORKING_CONSTANTS.hoseReach / (hose.facts.hoseLength ?? WORKING_CONSTANTS.hoseReach));
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
