import { describe, expect, it } from 'vitest';
import { withoutItems } from '#lib/fleet/drop-items.ts';
import { prepare } from '#lib/fleet/prepare.ts';
import type { Option } from '#lib/fleet/program.ts';
import { differentRoles, roleSharing, samenessOf } from '#lib/fleet/same-roles.ts';
import { smallFleet } from '#tests/support/plans/small-fleet.ts';

const option = (change: Partial<Option> = {}): Option => ({
  id: 'light drive',
  needs: [{ item: 0, count: 1 }],
  cost_minor: 100,
  time: 60,
  ...change,
});

describe('roles with the same options', () => {
  it('are one list, trimmed once', () => {
    let trimmed = 0;
    const trim = roleSharing((role) => {
      trimmed += 1;
      return role.slice(0, 1);
    });
    const first = trim([option(), option({ id: 'heavy drive' })]);
    expect(trim([option(), option({ id: 'heavy drive' })])).toBe(first);
    expect(trimmed).toBe(1);
    // Another role that comes to the same once it is trimmed is the same list too.
    expect(trim([option(), option({ id: 'swift drive' })])).toBe(first);
    expect(trimmed).toBe(2);
  });

  it('are two where a name differs, though they are the same to a plan', () => {
    const trim = roleSharing((role) => role);
    const [one, other] = [trim([option()]), trim([option({ id: 'other' })])];
    expect(other).not.toBe(one);
    expect(samenessOf(other)).toBe(samenessOf(one));
  });

  it.each([
    { needs: [{ item: 1, count: 1 }] },
    { needs: [{ item: 0, count: 2 }] },
    { needs: [] },
    { cost_minor: 101 },
    { time: 61 },
  ])('are not the same with %o', (change) => {
    expect(samenessOf([option(change)])).not.toBe(samenessOf([option()]));
  });

  it('stay one list through a whole program, also without some items', () => {
    const problem = smallFleet({ preference: 'cost' });
    const [first] = problem.classes;
    if (first === undefined) throw new Error('The small fleet has no class.');
    const { program } = prepare({ ...problem, classes: [...problem.classes, { ...first, id: 'again' }] });
    const again = program.jobs.find(({ id }) => id === 'again');
    const before = program.jobs.find(({ id }) => id === first.id);
    expect(again?.branches.length).toBeGreaterThan(0);
    expect(again?.branches.flatMap(({ roles }) => roles)).toEqual(before?.branches.flatMap(({ roles }) => roles));
    const alone = prepare(problem).program;
    expect(differentRoles(program).length).toBe(differentRoles(alone).length);
    const unused = withoutItems(program, new Set([program.items.length]));
    expect(differentRoles(unused).length).toBe(differentRoles(program).length);
  });
});
