/*
 * Decides the kind of valve from the type column and the remark.
 * Invariant: a kind named outright beats one only implied; a valve named by its purpose is taken as a gate valve and says that it is assumed.
 * Not here: things that are not valves at all (take-rows.ts).
 * Read next: read-line.ts.
 */
import type { ValveType } from '#lib/duty/schedule-line.ts';
import { type Fact, fact } from '#lib/units/known-value.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { quoted } from './plain-text.ts';
import type { Remark } from './read-remark.ts';
import { recogniseKind } from './recognise-kind.ts';

const GATES: ReadonlySet<ValveType> = new Set([
  'gate',
  'wedge gate',
  'flexible wedge gate',
  'double disc gate',
  'parallel slide gate',
]);

export function chooseType(context: CellContext, remark: Remark | null): Fact<ValveType> | undefined {
  const text = cellText(context, 'valve_type');
  const spoken = remark?.kind ?? null;
  if (text === undefined) {
    return spoken?.kind === 'valve'
      ? fact(spoken.type, { basis: 'stated', source: `Read from the remark ${quoted(remark?.text ?? '')}.` })
      : undefined;
  }
  const origin = originOf(context, 'valve_type');
  const named = text === 'unknown' ? null : recogniseKind(text);
  if (named?.kind === 'valve') {
    if (spoken?.kind === 'valve' && !agree(named.type, spoken.type)) {
      report(context, {
        code: 'type-remark-disagrees',
        column: 'valve_type',
        sentence: `The type column says ${named.type}, the remark ${quoted(remark?.text ?? '')} says ${spoken.type}; the column is taken.`,
        remedy: 'Ask, or look at the valve.',
      });
    }
    return fact(named.type, origin);
  }
  if (named?.kind === 'line valve') return lineValve({ context, text, remark });
  if (spoken?.kind === 'valve')
    return fact(spoken.type, { basis: 'stated', source: `Read from the remark ${quoted(remark?.text ?? '')}.` });
  if (spoken?.kind === 'line valve' && named?.kind === 'not operated') {
    return fact('gate', {
      basis: 'assumed',
      source: `The remark ${quoted(remark?.text ?? '')} makes it an ordinary line valve; a gate valve is assumed, the commonest kind there.`,
    });
  }
  report(context, {
    code: 'choice-unknown',
    column: 'valve_type',
    sentence:
      named?.kind === 'not operated'
        ? `Valve type ${quoted(text)} is not turned through a stroke. ${named.reason}`
        : `Valve type ${quoted(text)} is no kind of valve that is known here; it is taken as not known.`,
    remedy: 'Write the kind, for example gate, globe, butterfly, penstock or plug.',
  });
  return fact('unknown', origin);
}

/**
 * `Control valve`, `isolating valve`, `washout`: a purpose, not a kind. In a network list these are ordinary line valves,
 * and the commonest is the gate valve (common practice, no source). `unknown` would widen the duty over every kind of
 * valve and could hardly be planned; the assumption is printed with the quote instead.
 */
function lineValve(parts: {
  readonly context: CellContext;
  readonly text: string;
  readonly remark: Remark | null;
}): Fact<ValveType> {
  const { context, text, remark } = parts;
  const spoken = remark?.kind ?? null;
  if (spoken?.kind === 'valve')
    return fact(spoken.type, {
      basis: 'stated',
      source: `Read from the remark ${quoted(remark?.text ?? '')}; the type column only says ${quoted(text)}.`,
    });
  if (spoken?.kind === 'not operated' && /valve/.test(spoken.what)) {
    report(context, {
      code: 'kind-remark-disagrees',
      column: 'valve_type',
      sentence: `The type column says ${quoted(text)}, the remark ${quoted(remark?.text ?? '')} says ${spoken.what}; it is kept as a line valve.`,
      remedy: 'Ask; take the line out if it is one that works by itself.',
    });
  }
  return fact('gate', {
    basis: 'assumed',
    source: `${quoted(text)} names a purpose, not a kind; an ordinary line valve, and so a gate valve, is assumed (common practice, no source).`,
  });
}

function agree(a: ValveType, b: ValveType): boolean {
  return a === b || (GATES.has(a) && GATES.has(b));
}
