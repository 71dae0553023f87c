/*
 * Looks at every joint of a chain, every rating along it, and every option that must be there.
 * Invariant: ratings are held against the highest torque that this checker works out itself, not against the assembly's figure.
 * Not here: the place (check-place.ts), the grip (check-grip.ts), the settings (check-settings.ts).
 * Read next: highest-torque.ts.
 */
import type { Coupling } from '#lib/equipment/coupling.ts';
import type { Model } from '#lib/equipment/model.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import type { Subject } from './chain.ts';
import { atMost, type Discrepancy, holds } from './discrepancy.ts';
import { highestAtValve, needsLimiter, stallAtValve } from './highest-torque.ts';
import { slipOf } from './limiter-marks.ts';
import { isToAndFro } from './strokes.ts';

export function checkChain(subject: Subject): readonly Discrepancy[] {
  return [...checkJoints(subject), ...checkRatings(subject), ...checkOptions(subject), ...checkRestraint(subject)];
}

interface Link {
  readonly number: string;
  readonly input: Coupling | null;
  readonly output: Coupling | null;
}

function checkJoints({ chain }: Subject): readonly Discrepancy[] {
  const inLine = (place: 'after drive' | 'after head') =>
    chain.options.filter((option) => option.facts.sits === place).map(linkOf);
  const stem = [linkOf(chain.drive), ...inLine('after drive'), linkOf(chain.head), ...inLine('after head')];
  const lines = chain.links.map(({ adapter, extensions }) => [...stem, ...extensions.map(linkOf), linkOf(adapter)]);
  const pairs = lines.flatMap((line) => line.slice(1).map((link, index) => ({ up: line[index], down: link })));
  return pairs.flatMap(({ up, down }) =>
    holds(fits(up?.output ?? null, down.input), {
      code: 'assembly-joint',
      sentence: `${up?.number ?? 'Nothing'} does not join ${down.number}.`,
      expected: tell(up?.output ?? null),
      found: tell(down.input),
    }),
  );
}

function linkOf(part: Model): Link {
  switch (part.role) {
    case 'drive':
      return { number: part.number, input: null, output: part.facts.output };
    case 'head':
    case 'extension':
      return { number: part.number, input: part.facts.input, output: part.facts.output };
    case 'adapter':
      return { number: part.number, input: part.facts.input, output: null };
    case 'option':
      return { number: part.number, input: part.facts.input ?? null, output: part.facts.output ?? null };
    default:
      return { number: part.number, input: null, output: null };
  }
}

function fits(output: Coupling | null, input: Coupling | null): boolean {
  if (output === null || input === null) return false;
  return output.form === input.form && output.size === input.size && output.gender !== input.gender;
}

function tell(coupling: Coupling | null): string {
  return coupling === null ? 'no coupling' : `${coupling.form} ${coupling.size} ${coupling.gender}`;
}

function checkRatings(subject: Subject): readonly Discrepancy[] {
  const { head, extensions, adapters } = subject.chain;
  const highest = highestAtValve(subject);
  const behind = subject.chain.links.flatMap((link) => link.extensions);
  return [head, ...new Set([...extensions, ...behind]), ...adapters].flatMap((part) =>
    atMost({
      code: 'assembly-part-overloaded',
      what: `The highest torque at ${part.number} in N·m`,
      expected: part.facts.torqueRating,
      found: highest,
    }),
  );
}

function checkOptions(subject: Subject): readonly Discrepancy[] {
  const { chain, assembly, lineDuty } = subject;
  const needed = needsLimiter(subject);
  const bothWays = chain.limiter?.bothDirections ?? false;
  const counted = mustCount({ duty: lineDuty.duty, site: subject.site });
  return [
    ...holds(assembly.figures.limiterRequired === needed, {
      code: 'assembly-limiter-required',
      sentence: `A torque limiter is ${needed ? '' : 'not '}required here; the assembly says otherwise.`,
      expected: String(needed),
      found: String(assembly.figures.limiterRequired),
    }),
    ...holds(!needed || bothWays, {
      code: 'assembly-limiter-missing',
      sentence: 'A torque limiter that limits both ways is required and is not in the chain.',
      expected: 'a torque limiter for both ways',
      found: chain.limiter?.number ?? 'none',
    }),
    ...holds(assembly.figures.counterRequired === counted, {
      code: 'assembly-counter-required',
      sentence: `A turns counter is ${counted ? '' : 'not '}required here; the assembly says otherwise.`,
      expected: String(counted),
      found: String(assembly.figures.counterRequired),
    }),
    ...holds(!counted || chain.counter !== null, {
      code: 'assembly-counter-missing',
      sentence: 'A turns counter is required and is not in the assembly.',
      expected: 'a turns counter',
      found: chain.counter?.number ?? 'none',
    }),
    ...atMost({
      code: 'assembly-counter-short',
      what: 'The most turns of a stroke',
      expected: chain.counter?.facts.highestTurns ?? Number.POSITIVE_INFINITY,
      found: lineDuty.duty.turns.high,
    }),
  ];
}

function checkRestraint(subject: Subject): readonly Discrepancy[] {
  const { chain, lineDuty } = subject;
  const { restraint, head } = chain;
  const { duty } = lineDuty;
  const hasSecondChain = chain.accessories.some(({ model }) => model.facts.kind === 'second chain');
  const oneWay = duty.strokes <= 1 && !isToAndFro(subject) && duty.closes !== 'unknown';
  const travels = duty.grip.wheelRises !== 'no' && (duty.grip.travel?.high ?? 1) > 0.02;
  return [
    ...atMost({
      code: 'assembly-restraint-weak',
      what: `The highest stall torque at ${restraint.number} in N·m`,
      expected: restraint.facts.torqueRating,
      found: stallAtValve(subject),
    }),
    ...atMost({
      code: 'assembly-plate-slips',
      what: `The highest torque on ${restraint.number} in N·m`,
      expected: slipOf(restraint),
      found: highestAtValve(subject),
    }),
    ...holds(restraint.facts.headKinds.includes(head.facts.kind), {
      code: 'assembly-restraint-head',
      sentence: `${restraint.number} does not mount on ${head.number}.`,
      expected: restraint.facts.headKinds.join(', '),
      found: head.facts.kind,
    }),
    ...holds(restraint.facts.directions === 'both ways' || oneWay || hasSecondChain, {
      code: 'assembly-restraint-one-way',
      sentence: `${restraint.number} holds one way only and the work goes both ways without a second chain.`,
      expected: 'a restraint for both ways, or a second chain',
      found: restraint.facts.directions,
    }),
    ...holds(restraint.facts.followsTravel || !travels, {
      code: 'assembly-restraint-travel',
      sentence: `${restraint.number} does not follow a wheel that rises.`,
      expected: 'a restraint that follows',
      found: restraint.number,
    }),
  ];
}
