/*
 * What a crew has to do, line by line in working order, with what one valve of it asks of people: time, trigger time, vibration, noise.
 * Invariant: the times of all portions together are the crew's time in the plan.
 * Not here: splitting into days (split-days.ts).
 * Read next: crew-days.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { DriveModel, Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import { minutes, type Seconds, seconds } from '#lib/units/quantity.ts';
import type { Portion } from './split-days.ts';
import type { PlannedLine } from './worked-out.ts';

export interface Trigger {
  readonly low: Seconds;
  readonly nominal: Seconds;
  readonly high: Seconds;
}

export interface CrewPortion extends Portion {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  /** Key into the plan's assemblies. */
  readonly key: string;
  readonly assembly: Assembly;
  readonly drive: DriveModel;
  /** Powered strokes of a visit to one valve. */
  readonly trigger: Trigger;
}

export interface PortionsInput {
  readonly crew: number;
  readonly lineDuties: readonly LineDuty[];
  readonly site: Site;
  readonly models: ReadonlyMap<string, Model>;
  readonly lines: readonly PlannedLine[];
  readonly assemblies: Readonly<Record<string, Assembly>>;
}

/** Tags as people order them: SV-9 before SV-10. */
const order = new Intl.Collator('en', { numeric: true });

export function crewPortions(input: PortionsInput): readonly CrewPortion[] {
  const byTag = new Map(input.lineDuties.map((lineDuty) => [lineDuty.line.tag, lineDuty]));
  const portions = input.lines.flatMap(({ tag, parts }) => {
    const lineDuty = byTag.get(tag);
    return parts
      .filter(({ crew }) => crew === input.crew)
      .map(({ qty, assembly }) => {
        invariant(lineDuty, `The plan names line ${tag}, which is not in the list.`);
        return portionOf({ input, lineDuty, qty, key: assembly });
      });
  });
  return portions.toSorted((a, b) => place(a) - place(b) || order.compare(a.line.tag, b.line.tag));
}

function place({ line }: CrewPortion): number {
  return line.place.placeOrder ?? Number.MAX_SAFE_INTEGER;
}

function portionOf({
  input,
  lineDuty: { line, duty },
  qty,
  key,
}: {
  readonly input: PortionsInput;
  readonly lineDuty: LineDuty;
  readonly qty: number;
  readonly key: string;
}): CrewPortion {
  const assembly = input.assemblies[key];
  invariant(assembly, `The plan names assembly ${key}, which is not there.`);
  const drive = input.models.get(assembly.parts.drive);
  invariant(drive?.role === 'drive', `Assembly ${key} has no drive.`);
  const trigger = triggerOf(assembly, duty.strokes);
  return {
    line,
    duty,
    key,
    assembly,
    drive,
    qty,
    trigger,
    time: minutes(input.site.moveMinutes) + (line.place.accessTime?.nominal ?? 0) + assembly.figures.timePerValve,
    dose: drive.facts.vibration ** 2 * trigger.high,
  };
}

/** Strokes out and back; an odd one counts as the longer. */
function triggerOf({ opening, closing }: Assembly, strokes: number): Trigger {
  const [out, back] = [opening.strokeTime, closing.strokeTime];
  const both = Math.floor(strokes / 2);
  const all = (one: number, other: number): Seconds =>
    seconds(both * (one + other) + (strokes % 2) * Math.max(one, other));
  return {
    low: all(out.low, back.low),
    nominal: all((out.low + out.high) / 2, (back.low + back.high) / 2),
    high: all(out.high, back.high),
  };
}
