/*
 * `duty`: torque, turns, never-exceed and limiter window of every line, with basis.
 * Invariant: every readable line is answered.
 * Not here: equipment.
 * Read next: ../duty/assess-duty.ts.
 */
import { measureFirstText } from '#lib/documents/words/measure-first-words.ts';
import { spreadLine, whatItHangsOn } from '#lib/documents/words/spread-words.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { lineSpread } from '#lib/duty/line-spread.ts';
import { sampleDuty } from '#lib/duty/sample-duty.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { SPREAD_SEED } from '#lib/services/lines/spread-duty.ts';
import { formatRange } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { dutyAnswer, jsonText } from './answer.ts';
import type { Options } from './arguments.ts';
import { readInput } from './read-input.ts';

export async function dutyCommand(options: Options): Promise<number> {
  const read = await readInput(options);
  if (!read.ok) {
    process.stderr.write(`${read.reason.sentence}\n`);
    return 2;
  }
  const { taken, site } = read.value;
  const { spread: runs } = options;
  const answered = uniqueTags(taken.lines).map((line) => ({
    duty: assessDuty({ line, site }),
    spread: runs === undefined ? null : lineSpread(sampleDuty({ line, site, runs, seed: SPREAD_SEED })),
  }));
  if (options.json) {
    const duties = answered.map(({ duty, spread }) => ({
      ...dutyAnswer(duty),
      ...(spread === null ? {} : { spread }),
    }));
    process.stdout.write(`${jsonText({ duties })}\n`);
    return 0;
  }
  for (const { duty, spread } of answered) {
    const worse = duty.opening.starting.high >= duty.closing.starting.high ? duty.opening : duty.closing;
    process.stdout.write(
      `${duty.tag}: to start ${formatRange(worse.starting, options.units)} (${worse.starting.basis}), ${formatRange(duty.turns, options.units)} (${duty.turns.basis}), never above ${formatRange(worse.neverExceed.torque, options.units)} (${worse.neverExceed.kind})\n`,
    );
    for (const finding of duty.findings.filter(isAboutGivenValues))
      process.stdout.write(`  ${sentenceIn(finding, options.units)}\n`);
    const measure = measureFirstText(duty, options.units);
    if (measure !== null) process.stdout.write(`  Measure this first: ${measure}\n`);
    if (spread !== null)
      process.stdout.write(`  ${spreadLine(spread, options.units)} ${whatItHangsOn(spread, options.units)}\n`);
  }
  return 0;
}

/** What is said of the numbers that the list gives, and what stops the valve from being moved. */
function isAboutGivenValues({ id, severity }: Finding): boolean {
  return severity === 'refusal' || id.startsWith('value-') || id.includes('-against-') || id.startsWith('place-');
}
