/*
 * Roles that stand in many branches: the same options are one list, so that what is found in one is found once for all.
 * Invariant: two roles that are one list have the same options, names too, in the same order.
 * Not here: what is found in them (drop-items.ts, program-index.ts).
 * Read next: prepare.ts.
 */
import type { Option, Program, Role } from './program.ts';

/** Trims roles: each with other options once, to the one list that stands for all that are the same once trimmed. */
export function roleSharing(trim: (role: Role) => Role): (role: Role) => Role {
  const trimmed = new Map<string, Role>();
  const shared = new Map<string, Role>();
  return (role) => {
    const key = contentOf(role);
    const known = trimmed.get(key);
    if (known !== undefined) return known;
    const own = trim(role);
    const content = contentOf(own);
    const first = shared.get(content) ?? own;
    shared.set(content, first);
    trimmed.set(key, first);
    return first;
  };
}

/** Equal for roles with the same options, names too. */
function contentOf(role: Role): string {
  return role.map((option) => `${option.id} ${sameness(option)}`).join(';');
}

/** Equal for options that are the same to a plan, whatever their names. */
function sameness({ needs, cost_minor, time }: Option): string {
  let text = `${cost_minor} ${time}`;
  for (const { item, count } of needs) text += ` ${item}x${count}`;
  return text;
}

const texts = new WeakMap<Role, string>();

/** Equal for roles that are the same to a plan, whatever the names of their options. */
export function samenessOf(role: Role): string {
  const known = texts.get(role);
  if (known !== undefined) return known;
  const text = role.map(sameness).join(';');
  texts.set(role, text);
  return text;
}

const listed = new WeakMap<Program, readonly Role[]>();

/** Every role of a program once, in the order in which they first stand. */
export function differentRoles(program: Program): readonly Role[] {
  const known = listed.get(program);
  if (known !== undefined) return known;
  const roles = new Set<Role>();
  for (const { branches } of program.jobs) {
    for (const branch of branches) for (const role of branch.roles) roles.add(role);
  }
  const found = [...roles];
  listed.set(program, found);
  return found;
}
