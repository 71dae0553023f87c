/*
 * The one entrance by which tests make assemblies and plans: each that comes out has passed the independent checker, or the test fails.
 */
import type { AssemblyFacts } from '#lib/checking/chain.ts';
import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { checkOutcome } from '#lib/checking/check-outcome.ts';
import { checkPlan } from '#lib/checking/check-plan.ts';
import type { Discrepancy } from '#lib/checking/discrepancy.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { ChoiceFamily, FleetPlan } from '#lib/equipment/choices.ts';
import type { FleetProblem } from '#lib/fleet/fleet-problem.ts';
import { type LeftOut, leaveOut } from '#lib/fleet/leave-out.ts';
import { planFleet } from '#lib/fleet/plan-fleet.ts';
import { type BuildInput, buildAssembly } from '#lib/kits/build-assembly.ts';
import { type Choices, type ChoicesInput, findChoices } from '#lib/kits/find-choices.ts';
import { type ListedAssemblies, type ListInput, listAssemblies } from '#lib/kits/list-assemblies.ts';
import { partsFromIds } from '#lib/kits/parts-of.ts';
import { pairDuties } from '#lib/planning/pose-problem.ts';
import { workOut } from '#lib/planning/work-out.ts';
import type { WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';

/** Assemblies tried of each class, spread evenly over its families' alternatives. */
const TRIED_OF_A_CLASS = 40;

/** How many assemblies, plans and outcomes of plans this process has had checked, for tests to print. */
export const tally = { assemblies: 0, plans: 0, outcomes: 0 };

export function sound(assembly: Assembly, facts: Omit<AssemblyFacts, 'assembly'>): Assembly {
  tally.assemblies += 1;
  failOn(`Assembly ${assembly.id} of ${facts.lineDuty.line.tag}`, checkAssembly({ ...facts, assembly }));
  return assembly;
}

export function checkedAssembly(input: BuildInput): Assembly {
  return sound(buildAssembly(input), input);
}

export function checkedList(input: ListInput): ListedAssemblies {
  const listed = listAssemblies(input);
  for (const assembly of listed.assemblies) sound(assembly, input);
  return listed;
}

export function checkedChoices(input: ChoicesInput): Choices {
  const choices = findChoices(input);
  checkChoices(input, choices);
  return choices;
}

/** The search alone is timed, after a first run that warms the machine up; not the check. */
export function timedChoices(input: ChoicesInput): { readonly choices: Choices; readonly milliseconds: number } {
  findChoices(input);
  const started = performance.now();
  const choices = findChoices(input);
  const milliseconds = performance.now() - started;
  checkChoices(input, choices);
  return { choices, milliseconds };
}

/** Classes of a long list that are tried, spread evenly. */
const TRIED_OF_A_LIST = 40;

/** One run, as a person meets it; `told` hears of its end before the check. Of a long list some classes are checked. */
export function onceCheckedChoices(input: ChoicesInput, told: () => void): Choices {
  const choices = findChoices(input);
  told();
  const step = Math.max(1, choices.classes.length / TRIED_OF_A_LIST);
  const some = choices.classes.filter((_, index) => Math.floor(index / step) !== Math.floor((index - 1) / step));
  checkChoices(input, { ...choices, classes: some });
  return choices;
}

interface Timed<Found> {
  readonly found: Found;
  readonly milliseconds: number;
}

/** Time of this process alone. */
export function processorTimeOnce<Found>(run: () => Found): Timed<Found> {
  const before = process.cpuUsage();
  const found = run();
  const { user, system } = process.cpuUsage(before);
  return { found, milliseconds: (user + system) / 1000 };
}

/** The least of three runs, with what it found. */
export function processorTime<Found>(run: () => Found): Timed<Found> {
  const runs = [0, 1, 2].map(() => processorTimeOnce(run));
  const [first, ...others] = runs;
  if (first === undefined) throw new Error('Nothing was run.');
  return others.reduce((least, one) => (one.milliseconds < least.milliseconds ? one : least), first);
}

export function processorTimedChoices(input: ChoicesInput): {
  readonly choices: Choices;
  readonly milliseconds: number;
} {
  const { found, milliseconds } = processorTime(() => findChoices(input));
  checkChoices(input, found);
  return { choices: found, milliseconds };
}

export function processorTimedList(input: ListInput): number {
  const { found, milliseconds } = processorTime(() => listAssemblies(input));
  for (const assembly of found.assemblies) sound(assembly, input);
  return milliseconds;
}

function checkChoices(input: ChoicesInput, choices: Choices): void {
  for (const { tags, families } of choices.classes) {
    const lineDuty = input.lines.find(({ line }) => line.tag === tags[0]);
    if (lineDuty === undefined) throw new Error(`A class has no line ${tags[0]}.`);
    for (const ids of spread(families.flatMap(everyAlternative))) {
      checkedAssembly({ lineDuty, site: input.site, models: input.models, parts: partsFromIds(ids) });
    }
  }
}

export async function checkedPlan(problem: FleetProblem): Promise<FleetPlan> {
  const plan = await planFleet(problem);
  tally.plans += 1;
  failOn(`The plan by ${problem.preference}`, checkPlan({ ...problem, plan }));
  return plan;
}

/** The plan without the item, held against a house that has none of it free. */
export async function checkedLeaveOut(request: Parameters<typeof leaveOut>[0]): Promise<LeftOut> {
  const left = await leaveOut(request);
  const { problem, item } = request;
  const items = problem.items.map((one) => (one.id === item ? { ...one, free: 0 } : one));
  tally.plans += 1;
  failOn(`The plan without ${item}`, checkPlan({ ...problem, items, plan: left.plan }));
  return left;
}

/** Works an enquiry out; its own check must have found nothing; each kit and line, and each assembly on every line it serves, is checked here again. */
export async function checkedWorkOut(input: WorkOutInput): Promise<WorkedOut> {
  const worked = await workOut(input);
  const { classes } = findChoices({ ...input, lines: pairDuties(input.lines, worked.duties) });
  for (const plan of worked.plans) {
    tally.plans += 1;
    tally.outcomes += 1;
    failOn(`The kits and lines by ${plan.preference}`, checkOutcome({ ...input, classes, outcome: plan }));
    if (plan.discrepancies.length > 0) throw new Error(plan.discrepancies.join('\n'));
    for (const { tag, classId, parts } of plan.lines) {
      const first = worked.classes.find(({ id }) => id === classId)?.tags[0] ?? '';
      const line = input.lines.find((one) => one.tag === tag);
      const duty = worked.duties.find((one) => one.tag === tag);
      for (const { assembly } of parts) {
        const found = plan.assemblies[assembly];
        if (line === undefined || duty === undefined || found === undefined)
          throw new Error(`No line for ${assembly}.`);
        // What is found is said in the name of the first line of the class; all else must hold for each line of it.
        const lineDuty = { line: { ...line, tag: first }, duty: { ...duty, tag: first } };
        sound(found, { lineDuty, site: input.site, models: input.models });
      }
    }
  }
  return worked;
}

/** Choices that together hold each core and each alternative of each slot once. */
function everyAlternative({ cores, slots }: ChoiceFamily) {
  const most = Math.max(cores.length, ...slots.map((slot) => slot.length));
  return Array.from({ length: most }, (_, index) => ({
    core: cores[index % cores.length]?.id ?? '',
    slots: slots.map((slot) => slot[index % slot.length]?.id ?? ''),
  }));
}

function spread<Value>(values: readonly Value[]): readonly Value[] {
  const step = Math.max(1, values.length / TRIED_OF_A_CLASS);
  return values.filter((_, index) => Math.floor(index / step) !== Math.floor((index - 1) / step));
}

function failOn(subject: string, discrepancies: readonly Discrepancy[]): void {
  if (discrepancies.length === 0) return;
  const told = discrepancies.map(({ code, sentence }) => `  ${code}: ${sentence}`);
  throw new Error(`${subject} does not stand up to the check:\n${told.join('\n')}`);
}
