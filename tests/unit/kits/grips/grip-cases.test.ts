import { expect, it } from 'vitest';
import { ranged, SAMPLE_NUT, sampleDuty, sampleLine, sampleSite } from '#lib/rules/sample-facts.ts';
import { sampleDrive, sampleHead, sampleKey, sampleLimiter, sampleRestraint } from '#lib/rules/sample-parts.ts';
import { metres } from '#lib/units/quantity.ts';
import { checkedChoices } from '#tests/support/checked.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;

function keyFor(number: string, socket: { readonly across: number; readonly slack: number }) {
  const sockets = [{ shape: 'square', acrossFlats: metres(socket.across), slack: metres(socket.slack) }];
  return sampleKey({ number, facts: { sockets } });
}

function servedWith(slack: number): number {
  const grip = { ...SAMPLE_NUT, nutSizes: [ranged('m', 0.029, 0.036)] };
  const lineDuty = { line: sampleLine(), duty: sampleDuty({ grip, movement: 'keyed' }) };
  const keys = [keyFor('K-1', { across: 0.029, slack: 0.004 }), keyFor('K-2', { across: 0.036, slack })];
  const models = [sampleDrive(), sampleHead(), sampleLimiter(), sampleRestraint(), ...keys];
  return checkedChoices({ lines: [lineDuty], site: sampleSite(), models, constraints: NONE }).classes.length;
}

it('two sockets with a hole between them do not cover a range of nuts that reaches over it', () => {
  expect(servedWith(0.004)).toBe(0);
});

it('two sockets that meet cover it', () => {
  expect(servedWith(0.007)).toBe(1);
});
