/*
 * Holds the steps of an assembly's calculation sheet against those that this checker expects, number by number.
 * Invariant: every step is there once, in order, with every input of its formula, and its numbers, units and bases are right.
 * Not here: working the numbers out (expected-steps.ts).
 * Read next: expected-steps.ts.
 */
import type { Step } from '#lib/units/calculation-step.ts';
import type { Subject } from './chain.ts';
import { type Discrepancy, holds, same } from './discrepancy.ts';
import { expectedSteps } from './expected-steps.ts';
import type { ExpectedStep, Figure } from './figure.ts';

export function checkSteps(subject: Subject): readonly Discrepancy[] {
  const expected = expectedSteps(subject);
  const found = subject.assembly.steps;
  const [wanted, given] = [expected, found].map((steps) => steps.map(({ id }) => id).join(', '));
  return [
    ...holds(wanted === given, {
      code: 'assembly-steps',
      sentence: 'The calculation sheet does not show the steps that it should, each once and in order.',
      expected: wanted ?? '',
      found: given ?? '',
    }),
    ...expected.flatMap((step) =>
      found.filter(({ id }) => id === step.id).flatMap((one) => checkStep({ expected: step, found: one })),
    ),
  ];
}

function checkStep({
  expected,
  found,
}: {
  readonly expected: ExpectedStep;
  readonly found: Step;
}): readonly Discrepancy[] {
  const symbols = Object.keys(expected.inputs);
  const given = found.inputs.map(({ symbol }) => symbol);
  return [
    ...holds(symbols.toSorted().join() === given.toSorted().join(), {
      code: 'assembly-step-inputs',
      sentence: `Step ${found.id} does not name the inputs of its formula.`,
      expected: symbols.join(', '),
      found: given.join(', '),
    }),
    ...found.inputs.flatMap((input) => {
      const figure = expected.inputs[input.symbol];
      const what = `${input.symbol} in step ${found.id}`;
      return figure === undefined ? [] : compare({ code: 'assembly-step-input', what, expected: figure, found: input });
    }),
    ...compare({
      code: 'assembly-step-result',
      what: `What comes out of step ${found.id}`,
      expected: expected.result,
      found: found.result,
    }),
  ];
}

function compare(at: {
  readonly code: string;
  readonly what: string;
  readonly expected: Figure;
  readonly found: Figure & { readonly source: string };
}): readonly Discrepancy[] {
  const { code, what, expected, found } = at;
  return [
    ...(['low', 'nominal', 'high'] as const).flatMap((end) =>
      same({ code, what: `${what} (${end})`, expected: expected[end], found: found[end] }),
    ),
    ...holds(expected.source === undefined || expected.source === found.source, {
      code,
      sentence: `${what} is said to come from “${found.source}”.`,
      expected: expected.source ?? '',
      found: found.source,
    }),
    ...holds(expected.unit === found.unit && expected.basis === found.basis, {
      code,
      sentence: `${what} has unit ${found.unit} and basis ${found.basis}; it is ${expected.unit} and ${expected.basis}.`,
      expected: `${expected.unit}, ${expected.basis}`,
      found: `${found.unit}, ${found.basis}`,
    }),
  ];
}
