/*
 * Seeded fleet problems: tiny random ones that can be enumerated, and plausible ones of any size for benches and gates.
 */
import type { Alternative, ChoiceFamily, FleetItem, LineClass } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { toMinor } from '#lib/money/money.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';

export type Case = Omit<FleetProblem, 'preference' | 'budget'>;

export function whole(random: Random, range: { readonly from: number; readonly to: number }): number {
  return range.from + Math.floor(random() * (range.to - range.from + 1));
}

function makeItem(
  id: string,
  figures: { readonly cost: number; readonly pieces: number; readonly free: number },
): FleetItem {
  return { id, cost_minor: toMinor(figures.cost), mass: kilograms(5), pieces: figures.pieces, free: figures.free };
}

/** At most five valves in all, so that every way of doing them can be listed. */
export function tinyCase(seed: number): Case {
  const random = seededRandom(seed);
  const crews = whole(random, { from: 1, to: 3 });
  const itemCount = whole(random, { from: 3, to: 7 });
  const items = Array.from({ length: itemCount }, (_, index) =>
    makeItem(`i${index}`, {
      cost: whole(random, { from: 1, to: 60 }),
      pieces: random() < 0.2 ? 0 : 1,
      free: whole(random, { from: random() < 0.1 ? 0 : 1, to: 4 }),
    }),
  );
  const alternative = (id: string): Alternative => {
    const needs = new Map<string, number>();
    const wanted = whole(random, { from: random() < 0.15 ? 0 : 1, to: 2 });
    for (let index = 0; index < wanted; index += 1) {
      needs.set(`i${whole(random, { from: 0, to: itemCount - 1 })}`, random() < 0.25 ? 2 : 1);
    }
    return {
      id,
      needs: [...needs].map(([item, count]) => ({ item, count })),
      timePerValve: seconds(whole(random, { from: 1, to: 8 })),
      cost_minor: random() < 0.5 ? 0 : whole(random, { from: 0, to: 12 }),
      chance: whole(random, { from: 1, to: 4 }) / 4,
    };
  };
  const family = (id: string): ChoiceFamily => ({
    id,
    cores: Array.from({ length: whole(random, { from: 1, to: 2 }) }, (_, index) => alternative(`${id}c${index}`)),
    slots: Array.from({ length: whole(random, { from: 0, to: 2 }) }, (_, slot) =>
      Array.from({ length: whole(random, { from: 1, to: 2 }) }, (__, index) => alternative(`${id}s${slot}o${index}`)),
    ),
  });
  let left = crews === 3 ? 4 : 5;
  const classes: LineClass[] = [];
  while (left > 0 && classes.length < 3) {
    const qty = Math.min(left, whole(random, { from: 1, to: 3 }));
    left -= qty;
    const id = `k${classes.length}`;
    classes.push({
      id,
      tags: [id],
      qty,
      moveTime: seconds(whole(random, { from: 0, to: 4 })),
      families: Array.from({ length: whole(random, { from: 1, to: 2 }) }, (_, index) => family(`${id}f${index}`)),
    });
  }
  return {
    classes,
    items,
    crews,
    secondsPerCrew: seconds(whole(random, { from: 8, to: 70 })),
    labour_minor_per_hour: toMinor(random() < 0.3 ? 0 : 3600 * whole(random, { from: 1, to: 3 })),
  };
}

/** Models by role, with reach: a drive does up to its torque, an adapter its wheel band, a restraint its place. */
export function plausibleCase(size: {
  readonly seed: number;
  readonly classes: number;
  readonly items: number;
  readonly crews: number;
  /** Valves in a class, at most. */
  readonly most: number;
  /** Part of all crews' hours that the work takes if done the usual way. */
  readonly load: number;
}): Case {
  const random = seededRandom(size.seed);
  const shares = { drive: 0.3, head: 0.1, adapter: 0.3, extension: 0.1, restraint: 0.2 };
  const models = (role: keyof typeof shares, base: number) =>
    Array.from({ length: Math.max(2, Math.round(size.items * shares[role])) }, (_, index) => ({
      id: `${role}-${index}`,
      reach: random(),
      width: 0.15 + 0.5 * random(),
      speed: 0.5 + random(),
      kind: whole(random, { from: 0, to: 2 }),
      cost: Math.round(base * (0.4 + 1.6 * random())) * 100,
      free: whole(random, { from: 1, to: 5 }),
    }));
  const roles = {
    drive: models('drive', 220),
    head: models('head', 60),
    adapter: models('adapter', 45),
    extension: models('extension', 30),
    restraint: models('restraint', 40),
  };
  const items = Object.values(roles)
    .flat()
    .map((model) => makeItem(model.id, { cost: model.cost, pieces: 1, free: model.free }));
  const classes = Array.from({ length: size.classes }, (_, index) =>
    plausibleClass({ index, random, roles, most: size.most }),
  );
  const usual = classes.reduce((sum, one) => sum + one.qty * (one.moveTime + 1100), 0);
  return {
    classes,
    items,
    crews: size.crews,
    secondsPerCrew: seconds(Math.round(usual / size.crews / size.load)),
    labour_minor_per_hour: toMinor(5500),
  };
}

interface RoughModel {
  readonly id: string;
  readonly reach: number;
  readonly width: number;
  readonly speed: number;
  readonly kind: number;
}

function plausibleClass(request: {
  readonly index: number;
  readonly random: Random;
  readonly roles: Readonly<Record<'drive' | 'head' | 'adapter' | 'extension' | 'restraint', readonly RoughModel[]>>;
  readonly most: number;
}): LineClass {
  const { index, random, roles, most } = request;
  const torque = random() * 0.85;
  const size = random();
  const turns = 10 + 90 * random();
  const place = random();
  const alternative = (model: RoughModel, time: number): Alternative => ({
    id: model.id,
    needs: [{ item: model.id, count: 1 }],
    timePerValve: seconds(Math.round(time)),
    cost_minor: 0,
    chance: 1,
  });
  const near = (model: RoughModel, value: number) => Math.abs(model.reach - value) <= model.width;
  const nearest = (list: readonly RoughModel[], value: number) => {
    const fitting = list.filter((model) => near(model, value));
    if (fitting.length > 0) return fitting;
    return [...list].sort((a, b) => Math.abs(a.reach - value) - Math.abs(b.reach - value)).slice(0, 1);
  };
  const needsExtension = random() < 0.3;
  const strong = roles.drive.filter((model) => model.reach >= torque);
  const drives = strong.length > 0 ? strong : roles.drive;
  const families = [0, 1, 2].flatMap((kind): readonly ChoiceFamily[] => {
    const kindDrives = drives.filter((model) => model.kind === kind);
    if (kindDrives.length === 0) return [];
    const heads = roles.head.filter((model) => model.kind === kind);
    const cores = kindDrives.flatMap((drive) =>
      heads.length === 0
        ? [alternative(drive, (turns * 6) / drive.speed)]
        : heads.map((head) => ({
            ...alternative(drive, (turns * 6) / drive.speed / (0.7 + 0.3 * head.speed)),
            id: `${drive.id}+${head.id}`,
            needs: [
              { item: drive.id, count: 1 },
              { item: head.id, count: 1 },
            ],
          })),
    );
    const slots = [
      nearest(roles.adapter, size).map((model) => alternative(model, 120 + 60 * model.speed)),
      nearest(roles.restraint, place).map((model) => alternative(model, 200 + 100 * model.speed)),
      ...(needsExtension ? [nearest(roles.extension, torque).map((model) => alternative(model, 60))] : []),
    ];
    return [{ id: `kind-${kind}`, cores, slots }];
  });
  return {
    id: `class-${index}`,
    tags: [`V-${index}`],
    qty: whole(random, { from: 1, to: most }),
    moveTime: seconds(300 + Math.round(600 * random())),
    families,
  };
}
