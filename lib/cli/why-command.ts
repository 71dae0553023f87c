/*
 * `why`: why these parts, why not a part, or why nothing fits a line.
 * Invariant: the answer is made of rules and numbers.
 * Not here: planning.
 * Read next: ../kits/explain-part.ts.
 */
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { explainPart } from '#lib/kits/explain-part.ts';
import { findChoices } from '#lib/kits/find-choices.ts';
import { listAssemblies } from '#lib/kits/list-assemblies.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { houseModels } from '#lib/services/house-facts.ts';
import type { Options } from './arguments.ts';
import { readInput } from './read-input.ts';

const ASSEMBLIES_TOLD = 5;

export async function whyCommand(options: Options): Promise<number> {
  const read = await readInput(options);
  if (!read.ok) return refuse(read.reason.sentence);
  const { context, taken, site } = read.value;
  const line = uniqueTags(taken.lines).find(({ tag }) => tag === options.tag);
  if (!line) return refuse(`The list has no line “${options.tag}”.`);
  const models = houseModels(context);
  const lineDuty = { line, duty: assessDuty({ line, site }) };
  if (options.part !== undefined) {
    const answer = explainPart({ lineDuty, site, models, part: options.part });
    print(options, { tag: line.tag, part: options.part, ...answer }, [
      `${options.part} ${answer.fits ? 'serves' : 'does not serve'} ${line.tag}.`,
      ...answer.because.map(({ sentence }) => `  ${sentence}`),
    ]);
    return answer.fits ? 0 : 3;
  }
  const listed = listAssemblies({ lineDuty, site, models, constraints: NO_CONSTRAINTS, limit: ASSEMBLIES_TOLD });
  if (listed.assemblies.length > 0) {
    print(
      options,
      { tag: line.tag, ...listed },
      listed.assemblies.map(({ id, findings }) =>
        [id, ...findings.map(({ severity, sentence }) => `  ${severity}: ${sentence}`)].join('\n'),
      ),
    );
    return 0;
  }
  const [none] = findChoices({ lines: [lineDuty], site, models, constraints: NO_CONSTRAINTS }).unserved;
  print(options, { tag: line.tag, because: none?.because ?? [], repairs: none?.repairs ?? [] }, [
    `Nothing serves ${line.tag}:`,
    ...(none?.because ?? []).map(({ sentence }) => `  ${sentence}`),
    ...(none?.repairs ?? []).map(({ sentence }) => `  It would work so: ${sentence}`),
  ]);
  return 3;
}

function refuse(sentence: string): number {
  process.stderr.write(`${sentence}\n`);
  return 2;
}

function print(options: Options, answer: unknown, lines: readonly string[]): void {
  process.stdout.write(options.json ? `${JSON.stringify(answer)}\n` : `${lines.join('\n')}\n`);
}
