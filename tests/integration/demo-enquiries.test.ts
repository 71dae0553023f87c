import { beforeAll, describe, expect, it } from 'vitest';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import { RESTRAINT_KINDS } from '#lib/equipment/parts.ts';
import { DEMO_ENQUIRIES, demoEnquiries, demoModels } from '#seeds/load.ts';
import { type PlannedDemo, planDemo } from '#tests/support/plans/plan-demo.ts';

/** Lines that nothing serves, on purpose: what the demo explains. */
const IMPOSSIBLE: Readonly<Record<string, readonly string[]>> = {
  'buried-mains': ['SV-111'],
  'tank-terminal': [],
  'refinery-shutdown': ['CP-212'],
  ship: ['OV-6', 'DB-7'],
  dam: ['UL-6'],
  'treatment-works': ['QM-7'],
  contractor: [],
};

const MODELS = new Map(demoModels().map((model) => [model.number, model]));

function model(number: string): Model {
  const found = MODELS.get(number);
  if (found === undefined) throw new Error(`The demo catalogue has no ${number}.`);
  return found;
}

/** What a person sees of an assembly: source, class and kinds of its parts. */
function seenIn({ parts }: Assembly): readonly string[] {
  const numbers = [parts.drive, parts.head, parts.restraint, ...parts.extensions, ...parts.adapters, ...parts.options];
  return numbers.map(model).flatMap((part) => {
    switch (part.role) {
      case 'drive':
        return [`${part.facts.power.kind} drive`, `${part.facts.dutyClass} class`];
      case 'head':
        return [`${part.facts.kind} head`];
      case 'adapter':
        return adapterSeen({ part, extended: parts.extensions.length > 0 });
      case 'extension':
      case 'restraint':
      case 'option':
        return [part.facts.kind];
      default:
        return [];
    }
  });
}

function adapterSeen({
  part,
  extended,
}: {
  readonly part: Extract<Model, { role: 'adapter' }>;
  readonly extended: boolean;
}): readonly string[] {
  const { kind, wheel, takesExtension, length } = part.facts;
  if (kind === 'valve key') return length !== undefined && length.low < length.high ? ['telescopic valve key'] : [];
  if (kind !== 'spoke driver') return [kind];
  if (takesExtension) return extended ? ['spoke driver through an extension'] : [];
  return [(wheel?.dishUpTo ?? 0) > 16 ? 'spoke driver for dished rims' : 'spoke driver for flat rims'];
}

const EVERY_KIND = [
  'battery drive',
  'air drive',
  'petrol drive',
  'light class',
  'medium class',
  'heavy class',
  'turns counter',
  'torque limiter',
  'open-centre head',
  'inline head',
  'right-angle head',
  'peg plate',
  'self-centring driver',
  'spoke driver for flat rims',
  'spoke driver for dished rims',
  'spoke driver through an extension',
  'bolt-on plate',
  'drive socket',
  'telescopic valve key',
  'universal joint',
  ...RESTRAINT_KINDS,
];

describe('the demo enquiries', () => {
  const planned = new Map<string, PlannedDemo>();

  beforeAll(async () => {
    for (const enquiry of demoEnquiries()) planned.set(enquiry.id, await planDemo(enquiry));
  }, 240_000);

  it.each([...DEMO_ENQUIRIES])('%s: every row of the list becomes a line', (id) => {
    const counts = planned.get(id)?.taken.counts;
    expect(counts?.lines).toBe(counts?.rows);
    expect(counts?.rows).toBeGreaterThan(3);
  });

  it.each([...DEMO_ENQUIRIES])(
    '%s: the lines that nothing serves are those that are impossible on purpose, each with its reason',
    (id) => {
      const unserved = planned.get(id)?.unserved ?? [];
      expect(unserved.map(({ tag }) => tag)).toEqual(IMPOSSIBLE[id]);
      expect(unserved.every(({ because }) => because.length > 0)).toBe(true);
    },
  );

  it.each([...DEMO_ENQUIRIES])('%s: the house has what it takes to serve all others on its dates', (id) => {
    const plan = planned.get(id)?.plan;
    expect(plan?.served).toBe(plan?.asked);
    expect(plan?.asked).toBeGreaterThan(0);
  });

  it('together they choose every kind of equipment that the house has', () => {
    const seen = new Set([...planned.values()].flatMap(({ assemblies }) => assemblies.flatMap(seenIn)));
    expect(EVERY_KIND.filter((kind) => !seen.has(kind))).toEqual([]);
  });

  it('a purpose-made restraint is chosen only where no stock piece holds', () => {
    const made = [...planned.values()].flatMap(({ assemblies }) =>
      assemblies.filter(({ parts }) => model(parts.restraint).madeToOrder),
    );
    expect(made.length).toBe(1);
    expect(made[0]?.findings.some(({ id }) => id === 'workshop-enquiry')).toBe(true);
  });

  it('some of them keep more than one crew at work', () => {
    const busy = [...planned.values()].filter(({ plan }) => plan.kits.filter(({ time }) => time > 0).length > 1);
    expect(busy.length).toBeGreaterThan(1);
  });
});
