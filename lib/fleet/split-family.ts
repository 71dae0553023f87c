/*
 * Splits a family into branches in which the chance is one number and no item stands in two roles.
 * Invariant: every combination of the family is in exactly one branch; pieces that two parts of one assembly need are added up.
 * Not here: leaving out options that cannot be used or are never better (prepare.ts).
 * Read next: prepare.ts.
 */
import type { ChoiceFamily } from '#lib/equipment/choices.ts';
import { type Branch, type Need, type Option, pick } from './program.ts';

/** An option before it is split off, with the chance that becomes the branch's. */
export interface RawOption extends Option {
  readonly chance: number;
}

/** Beyond so many branches chances are rounded, and the plan's bound widened by what that can hide. */
export const BRANCH_LIMIT = 240;

export interface Split {
  readonly branches: readonly Branch[];
  /** The most by which a branch's chance may stand below the true one. */
  readonly chanceLost: number;
}

export function splitFamily(request: {
  readonly family: ChoiceFamily;
  readonly roles: readonly (readonly RawOption[])[];
  /** Chances matter for one preference only; elsewhere splitting by them would only make work. */
  readonly chances: 'kept' | 'ignored';
}): Split {
  const { family, roles, chances } = request;
  const shared = itemsInTwoRoles(roles);
  const exact = (chance: number) => (chances === 'kept' ? chance : 1);
  for (const step of [0, 64, 16, 4, 1]) {
    const rounded = (chance: number) => (step === 0 ? exact(chance) : Math.floor(exact(chance) * step) / step);
    const groups = roles.map((role) => groupRole({ role, shared, chanceOf: rounded }));
    const size = groups.reduce((product, group) => product * group.length, 1);
    if (size > BRANCH_LIMIT && step !== 1 && chances === 'kept') continue;
    const branches = combine(groups).map((parts) => toBranch({ family, parts, shared }));
    return { branches, chanceLost: step === 0 ? 0 : mostLost(groups, exact) };
  }
  return { branches: [], chanceLost: 0 };
}

interface Group {
  readonly chance: number;
  readonly options: readonly RawOption[];
}

function itemsInTwoRoles(roles: readonly (readonly RawOption[])[]): ReadonlySet<number> {
  const firstRole = new Map<number, number>();
  const shared = new Set<number>();
  for (const [role, options] of roles.entries()) {
    for (const option of options) {
      for (const { item } of option.needs) {
        const first = firstRole.get(item) ?? role;
        firstRole.set(item, first);
        if (first !== role) shared.add(item);
      }
    }
  }
  return shared;
}

function groupRole(request: {
  readonly role: readonly RawOption[];
  readonly shared: ReadonlySet<number>;
  readonly chanceOf: (chance: number) => number;
}): readonly Group[] {
  const groups = new Map<string, { chance: number; options: RawOption[] }>();
  for (const option of request.role) {
    const chance = request.chanceOf(option.chance);
    const sharedNeeds = option.needs.filter((need) => request.shared.has(need.item));
    const key = `${chance}|${sharedNeeds.map((need) => `${need.item}x${need.count}`).join(' ')}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { chance, options: [option] });
    else group.options.push(option);
  }
  return [...groups.values()];
}

function combine(groups: readonly (readonly Group[])[]): readonly (readonly Group[])[] {
  return groups.reduce<readonly (readonly Group[])[]>(
    (soFar, role) => soFar.flatMap((parts) => role.map((group) => [...parts, group])),
    [[]],
  );
}

function toBranch(request: {
  readonly family: ChoiceFamily;
  readonly parts: readonly Group[];
  readonly shared: ReadonlySet<number>;
}): Branch {
  const { family, parts, shared } = request;
  const totals = new Map<number, number>();
  for (const part of parts) {
    for (const need of pick(part.options, 0).needs) {
      if (shared.has(need.item)) totals.set(need.item, (totals.get(need.item) ?? 0) + need.count);
    }
  }
  // One assembly uses one option of every role at once, so the sum may stand in the core's role alone.
  const together: readonly Need[] = [...totals].map(([item, count]) => ({ item, count }));
  const roles = parts.map((part, role) =>
    part.options.map(({ id, needs, cost_minor, time }) => {
      const own = needs.filter((need) => !shared.has(need.item));
      return {
        id,
        cost_minor,
        time,
        needs: (role === 0 ? [...own, ...together] : own).sort((a, b) => a.item - b.item),
      };
    }),
  );
  return { family: family.id, roles, chance: parts.reduce((product, part) => product * part.chance, 1) };
}

function mostLost(groups: readonly (readonly Group[])[], exact: (chance: number) => number): number {
  let most = 0;
  for (const parts of combine(groups)) {
    const top = parts.reduce((product, part) => product * Math.max(...part.options.map((one) => exact(one.chance))), 1);
    most = Math.max(most, top - parts.reduce((product, part) => product * part.chance, 1));
  }
  return most;
}
