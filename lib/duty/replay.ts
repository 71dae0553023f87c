/*
 * Works the values of a tape out again at chosen points of what went into them.
 * Invariant: an input is drawn once and used wherever the same value stands; what is worked out is never drawn.
 * Not here: which points (sample-duty.ts), the intervals (sheet.ts).
 * Read next: sample-duty.ts.
 */
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Tape, TapeEntry, TapeInput } from './tape.ts';

export interface Replay {
  /** What the asked values hang on and is not known exactly, in order of first use. */
  readonly inputs: readonly TapeInput[];
  /** Values of what was asked for, in that order, with the inputs at these points. */
  readonly at: (point: (input: number) => number) => readonly number[];
}

/** Only the part of the tape that the asked values hang on is kept. */
export function replayOf({ tape, asked }: { readonly tape: Tape; readonly asked: readonly Known<Unit>[] }): Replay {
  const entries = neededFor(tape, asked);
  const slots = new Map<Known<Unit>, number>();
  const values: number[] = [];
  const inputs: TapeInput[] = [];
  const drawnSlots: number[] = [];
  const slotOf = (input: TapeInput): number => {
    const known = slots.get(input.value);
    if (known !== undefined) return known;
    const slot = newSlot(input.value);
    if (input.value.low < input.value.high) {
      inputs.push(input);
      drawnSlots.push(slot);
    }
    return slot;
  };
  const newSlot = (value: Known<Unit>): number => {
    const slot = values.push(value.nominal) - 1;
    slots.set(value, slot);
    return slot;
  };
  const program = entries.map((entry) => {
    const from = new Map(entry.inputs.map((input) => [input.key, slotOf(input)]));
    const at = (key: string): number => values[from.get(key) ?? -1] ?? Number.NaN;
    return { evaluate: entry.evaluate, at, to: newSlot(entry.result) };
  });
  const answers = asked.map((value) => slotOf({ key: '', name: 'value given in the list', value, picks: false }));
  return {
    inputs,
    at: (point) => {
      for (const [index, slot] of drawnSlots.entries()) values[slot] = point(index);
      for (const { evaluate, at, to } of program) {
        const value = evaluate(at);
        values[to] = Number.isFinite(value) ? value : 0;
      }
      return answers.map((slot) => values[slot] ?? Number.NaN);
    },
  };
}

function neededFor(tape: Tape, asked: readonly Known<Unit>[]): readonly TapeEntry[] {
  const wanted = new Set<Known<Unit>>(asked);
  const kept = tape.toReversed().filter(({ result, inputs }) => {
    if (!wanted.has(result)) return false;
    for (const { value } of inputs) wanted.add(value);
    return true;
  });
  return kept.toReversed();
}
