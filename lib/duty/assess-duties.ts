/*
 * The duties of a whole schedule: lines that say the same are worked out once.
 * Invariant: each duty equals what assessDuty gives for its line alone.
 * Not here: the calculation itself (assess-duty.ts).
 * Read next: assess-duty.ts.
 */
import { assessDuty } from './assess-duty.ts';
import type { Duty } from './duty.ts';
import type { ScheduleLine } from './schedule-line.ts';
import type { Site } from './site.ts';
import { flowSides } from './special-thrusts.ts';
import { isBuried } from './valve-character.ts';

export function assessDuties({
  lines,
  site,
}: {
  readonly lines: readonly ScheduleLine[];
  readonly site: Site;
}): readonly Duty[] {
  const known = new Map<string, Duty>();
  return lines.map((line) => {
    const key = whatCounts(line);
    const duty = known.get(key) ?? assessDuty({ line, site });
    known.set(key, duty);
    return { ...duty, tag: line.tag };
  });
}

/** All of a line that its duty can depend on; of free text only what is read out of it. */
function whatCounts(line: ScheduleLine): string {
  const { tag: _tag, notes, photo: _photo, place, ...rest } = line;
  const { location: _location, placeOrder: _order, accessTime: _access, ...where } = place;
  return JSON.stringify([rest, where, isBuried(line), flowSides(notes)]);
}
