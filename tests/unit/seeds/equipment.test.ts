import { describe, expect, it } from 'vitest';
import { type Coupling, joins } from '#lib/equipment/coupling.ts';
import { DUTY_CLASSES } from '#lib/equipment/drive.ts';
import type { AdapterModel, DriveModel, ExtensionModel, HeadModel, Model, Role } from '#lib/equipment/model.ts';
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { demoModels } from '#seeds/load.ts';

const MODELS = demoModels();

function ofRole<Kind extends Role>(role: Kind): readonly Extract<Model, { role: Kind }>[] {
  return MODELS.filter((model): model is Extract<Model, { role: Kind }> => model.role === role);
}

const DRIVES = ofRole('drive');
const HEADS = ofRole('head');
const ADAPTERS = ofRole('adapter');
const EXTENSIONS = ofRole('extension');
const RESTRAINTS = ofRole('restraint');
const OPTIONS = ofRole('option');
const ACCESSORIES = ofRole('accessory');

const headsOf = (drive: DriveModel): readonly HeadModel[] =>
  HEADS.filter((head) => joins(drive.facts.output, head.facts.input));
const highestStall = (drive: DriveModel): number => Math.max(...drive.facts.gears.map((gear) => gear.stallTorque));
const stallAtValve = (drive: DriveModel, head: HeadModel): number =>
  highestStall(drive) * head.facts.ratio * head.facts.efficiency.high;

/** Adapters that join a head's output, or join it through one coupling piece. */
function adaptersOf(
  head: HeadModel,
): readonly { readonly adapter: AdapterModel; readonly through: ExtensionModel | null }[] {
  const direct = ADAPTERS.filter((adapter) => joins(head.facts.output, adapter.facts.input)).map((adapter) => ({
    adapter,
    through: null,
  }));
  const pieces = EXTENSIONS.filter((piece) => joins(head.facts.output, piece.facts.input));
  const through = pieces.flatMap((piece) =>
    ADAPTERS.filter((adapter) => joins(piece.facts.output, adapter.facts.input)).map((adapter) => ({
      adapter,
      through: piece,
    })),
  );
  return [...direct, ...through];
}

function couplingsOf(model: Model): readonly Coupling[] {
  switch (model.role) {
    case 'drive':
      return [model.facts.output];
    case 'adapter':
      return [model.facts.input];
    case 'head':
    case 'extension':
      return [model.facts.input, model.facts.output];
    case 'option':
      return [model.facts.input, model.facts.output].filter((coupling) => coupling !== undefined);
    default:
      return [];
  }
}

describe('the demo catalogue', () => {
  it('is large enough and every number is used once', () => {
    expect(MODELS.length).toBeGreaterThanOrEqual(120);
    expect(new Set(MODELS.map(({ number }) => number)).size).toBe(MODELS.length);
    expect(new Set(MODELS.map(({ name }) => name)).size).toBe(MODELS.length);
  });

  it('has every power source in every duty class, with two or three gears', () => {
    for (const source of ['battery', 'air', 'petrol']) {
      for (const dutyClass of DUTY_CLASSES) {
        const some = DRIVES.filter(({ facts }) => facts.power.kind === source && facts.dutyClass === dutyClass);
        expect(some.length, `${source} ${dutyClass}`).toBeGreaterThan(0);
      }
    }
    expect(DRIVES.every(({ facts }) => facts.gears.length === 2 || facts.gears.length === 3)).toBe(true);
  });

  it('has every kind of head, adapter, extension, restraint and option', () => {
    const kinds = (models: readonly { readonly facts: { readonly kind: string } }[]) =>
      new Set(models.map(({ facts }) => facts.kind));
    expect(kinds(HEADS)).toEqual(new Set(['inline', 'right-angle', 'open-centre']));
    expect(kinds(ADAPTERS)).toEqual(
      new Set(['peg plate', 'self-centring driver', 'spoke driver', 'bolt-on plate', 'drive socket', 'valve key']),
    );
    expect(kinds(EXTENSIONS)).toEqual(new Set(['extension shaft', 'universal joint']));
    expect(kinds(RESTRAINTS)).toEqual(new Set(RESTRAINT_KINDS));
    expect(kinds(OPTIONS)).toEqual(new Set(['turns counter', 'torque limiter']));
    expect(HEADS.some(({ facts }) => facts.reverses)).toBe(true);
    expect(EXTENSIONS.some(({ facts }) => facts.bore !== undefined && facts.length.low > 0.2)).toBe(true);
    const drivers = ADAPTERS.filter(({ facts }) => facts.kind === 'spoke driver');
    expect(drivers.some(({ facts }) => (facts.wheel?.dishUpTo ?? 0) < 6)).toBe(true);
    expect(drivers.some(({ facts }) => (facts.wheel?.dishUpTo ?? 0) > 20)).toBe(true);
    expect(drivers.some(({ facts }) => facts.takesExtension)).toBe(true);
    expect(new Set(ADAPTERS.flatMap(({ facts }) => (facts.sockets ?? []).map(({ shape }) => shape)))).toEqual(
      new Set(['square', 'tapered square', 'hexagon', 'pentagon']),
    );
    expect(
      RESTRAINTS.filter(({ madeToOrder }) => madeToOrder).every(({ facts }) => facts.kind === 'purpose-made restraint'),
    ).toBe(true);
  });

  it('has both genders of every coupling that it uses', () => {
    const used = MODELS.flatMap(couplingsOf);
    for (const coupling of used) {
      expect(
        used.some((other) => joins(coupling, other)),
        `${coupling.form} ${coupling.size} ${coupling.gender}`,
      ).toBe(true);
    }
  });

  it('does not join everything to everything', () => {
    const pairs = DRIVES.flatMap((drive) => HEADS.map((head) => joins(drive.facts.output, head.facts.input)));
    expect(pairs.filter(Boolean).length).toBeLessThan(pairs.length / 2);
    const grips = HEADS.flatMap((head) => ADAPTERS.map((adapter) => joins(head.facts.output, adapter.facts.input)));
    expect(grips.filter(Boolean).length).toBeLessThan(grips.length / 2);
  });

  it('gives every drive heads of all three kinds that carry its highest stall torque and speed', () => {
    for (const drive of DRIVES) {
      const fitting = headsOf(drive).filter(
        (head) =>
          stallAtValve(drive, head) <= head.facts.torqueRating &&
          Math.max(...drive.facts.gears.map((gear) => gear.freeSpeed)) <= head.facts.maxInputSpeed,
      );
      expect(new Set(fitting.map(({ facts }) => facts.kind)), drive.number).toEqual(
        new Set(['inline', 'right-angle', 'open-centre']),
      );
    }
  });

  it('gives every drive and head a restraint that the highest stall torque cannot overload', () => {
    for (const drive of DRIVES) {
      for (const head of headsOf(drive)) {
        const holding = RESTRAINTS.filter(
          (restraint) =>
            !restraint.madeToOrder &&
            restraint.facts.headKinds.includes(head.facts.kind) &&
            restraint.facts.torqueRating >= stallAtValve(drive, head),
        );
        expect(
          holding.some(({ facts }) => facts.directions === 'both ways'),
          `${drive.number} ${head.number}`,
        ).toBe(true);
      }
    }
  });

  it('gives every restraint a force rating that its own torque rating cannot exceed at its shortest arm, shock included', () => {
    /* Statics: F = T / (arm · sin 60°); two anchors share a balanced one. Shock 2 is judgement, no source. */
    for (const { number, facts } of RESTRAINTS) {
      const arm = facts.sideLoad === 'single anchor' ? facts.arm.low : 2 * facts.arm.low;
      const force = (2 * facts.torqueRating) / (arm * Math.sin(Math.PI / 3));
      expect(force, number).toBeLessThanOrEqual(facts.forceRating);
    }
  });

  it('gives every one-way restraint a second chain or strap for reversing work', () => {
    const oneWay = RESTRAINTS.filter(({ facts }) => facts.directions === 'one way');
    expect(oneWay.length).toBeGreaterThan(3);
    for (const { number } of oneWay) {
      expect(
        ACCESSORIES.some(({ facts }) => facts.kind === 'second chain' && facts.fits.includes(number)),
        number,
      ).toBe(true);
    }
  });

  it('gives every head an adapter, and every adapter a head that brings it to work', () => {
    for (const head of HEADS) expect(adaptersOf(head).length, head.number).toBeGreaterThan(0);
    const reached = new Set(HEADS.flatMap((head) => adaptersOf(head).map(({ adapter }) => adapter.number)));
    expect(ADAPTERS.filter(({ number }) => !reached.has(number)).map(({ number }) => number)).toEqual([]);
  });

  it('lets a rising stem through a whole chain in every duty class', () => {
    for (const dutyClass of DUTY_CLASSES) {
      const heads = DRIVES.filter(({ facts }) => facts.dutyClass === dutyClass)
        .flatMap(headsOf)
        .filter(({ facts }) => facts.kind === 'open-centre');
      const wheels = heads.flatMap((head) =>
        ADAPTERS.filter((adapter) => joins(head.facts.output, adapter.facts.input) && adapter.facts.bore !== undefined),
      );
      expect(wheels.length, dutyClass).toBeGreaterThan(3);
    }
  });

  it('reaches further at the valve with each duty class', () => {
    const highest = DUTY_CLASSES.map((dutyClass) =>
      Math.max(
        ...DRIVES.filter(({ facts }) => facts.dutyClass === dutyClass).flatMap((drive) =>
          headsOf(drive).map((head) => stallAtValve(drive, head)),
        ),
      ),
    );
    const [light = 0, medium = 0, heavy = 0] = highest;
    expect(light).toBeGreaterThan(110);
    expect(light).toBeLessThan(150);
    expect(medium).toBeGreaterThan(3 * light);
    expect(medium).toBeLessThan(500);
    expect(heavy).toBeGreaterThan(3 * medium);
    expect(heavy).toBeLessThan(2000);
  });

  it('keeps parts on driving squares below the torque that hand tools of the square are tested with', () => {
    /* ISO 1174-1 squares; minimum test torques of hand-operated driving parts by square, N·m. 40 mm is not in that table. */
    const tested: Readonly<Record<string, number>> = { '12.5': 512, '20': 1412, '25': 2515 };
    let checked = 0;
    for (const model of MODELS) {
      if (model.role !== 'head' && model.role !== 'adapter' && model.role !== 'extension') continue;
      for (const coupling of couplingsOf(model)) {
        const limit = coupling.form === 'square' ? tested[coupling.size] : undefined;
        if (limit === undefined) continue;
        expect(model.facts.torqueRating, model.number).toBeLessThanOrEqual(limit);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(40);
  });

  it('asks less a day for a longer hire and never more for it', () => {
    for (const { number, rates, replacement_minor } of MODELS) {
      expect(rates.week_minor, number).toBeLessThanOrEqual(7 * rates.day_minor);
      expect(rates.week_minor, number).toBeGreaterThanOrEqual(rates.day_minor);
      expect(rates.four_weeks_minor, number).toBeLessThanOrEqual(4 * rates.week_minor);
      expect(rates.four_weeks_minor, number).toBeGreaterThanOrEqual(rates.week_minor);
      expect(replacement_minor, number).toBeGreaterThan(rates.four_weeks_minor);
    }
  });

  it('has for every drive what feeds it: packs and chargers, hoses and air treatment, or fuel', () => {
    const kindsFor = (number: string): readonly string[] =>
      ACCESSORIES.filter(({ facts }) => facts.fits.includes(number)).map(({ facts }) => facts.kind);
    for (const drive of DRIVES) {
      const { power } = drive.facts;
      if (power.kind === 'battery') {
        const pack = ACCESSORIES.find(({ number }) => number === power.packNumber);
        expect(pack?.facts.fits, drive.number).toContain(drive.number);
        expect(pack?.lithium?.energy, drive.number).toBeCloseTo(power.voltage * power.capacity_ah, 6);
        expect(drive.lithium, drive.number).toEqual({ energy: pack?.lithium?.energy, packs: power.packsIncluded });
        expect(new Set(kindsFor(power.packNumber)), drive.number).toEqual(new Set(['charger']));
      } else if (power.kind === 'air') {
        expect(
          ACCESSORIES.some(({ facts }) => facts.hoseBore === power.hoseBore),
          drive.number,
        ).toBe(true);
        expect(new Set(kindsFor(drive.number))).toEqual(
          new Set(['filter-regulator-lubricator', 'dry filter-regulator']),
        );
      } else {
        expect(kindsFor(drive.number)).toContain('fuel can');
      }
    }
  });

  it('marks some drives of every class for hazardous areas, and none that burns petrol', () => {
    const marked = DRIVES.filter(({ marking }) => marking !== null);
    expect(new Set(marked.map(({ facts }) => facts.dutyClass))).toEqual(new Set(DUTY_CLASSES));
    expect(marked.every(({ facts }) => facts.power.kind === 'air')).toBe(true);
    expect(DRIVES.some(({ marking, facts }) => marking === null && facts.power.kind === 'air')).toBe(true);
    for (const { marking, number } of MODELS) {
      if (marking !== null) expect(marking, number).toMatch(/^II [123] G Ex (h|ia|db|ec)( h)? II[ABC] T[1-6] G[abc]$/);
    }
  });

  it('names only models that exist as what an accessory fits', () => {
    const numbers = new Set(MODELS.map(({ number }) => number));
    expect(ACCESSORIES.flatMap(({ facts }) => facts.fits).filter((number) => !numbers.has(number))).toEqual([]);
  });
});
