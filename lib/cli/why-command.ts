/*
 * `why`: why these parts, why not a part, or why nothing fits a line.
 * Invariant: the answer is made of rules and numbers.
 * Not here: planning with and without a part (../planning/leave-out-part.ts).
 * Read next: ../kits/why/explain-part.ts.
 */
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { partNumbers } from '#lib/documents/drawings/part-numbers.ts';
import { withoutTag } from '#lib/documents/words/line-warnings.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import { leaveOutPart } from '#lib/planning/leave-out-part.ts';
import { listSoundAssemblies } from '#lib/planning/list-sound-assemblies.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { jsonText } from './answer.ts';
import type { Options } from './arguments.ts';
import { leftOutLines } from './left-out.ts';
import { planInput } from './plan-input.ts';
import { type CommandInput, readInput } from './read-input.ts';
import { treeLines } from './tree-lines.ts';

const ASSEMBLIES_TOLD = 5;

export async function whyCommand(options: Options): Promise<number> {
  const read = await readInput(options);
  if (!read.ok) return refuse(read.reason.sentence);
  const { context, taken, site } = read.value;
  const line = uniqueTags(taken.lines).find(({ tag }) => tag === options.tag);
  if (!line) return refuse(`The list has no line “${options.tag}”.`);
  const models = houseModels(context);
  const lineDuty = { line, duty: assessDuty({ line, site }) };
  if (options.part !== undefined) return tellPart({ options, input: read.value, lineDuty, part: options.part });
  const listed = listSoundAssemblies({ lineDuty, site, models, constraints: NO_CONSTRAINTS, limit: ASSEMBLIES_TOLD });
  if (listed.assemblies.length > 0) {
    print(
      options,
      { tag: line.tag, ...listed },
      tellAssemblies({ tag: line.tag, assemblies: listed.assemblies, models, system: options.units }),
    );
    return 0;
  }
  const none = listed.unserved;
  print(options, { tag: line.tag, because: none?.because ?? [], repairs: none?.repairs ?? [] }, [
    ...(none?.reasons === undefined ? [] : treeLines(none.reasons, options.units)),
    ...(none?.repairs ?? []).map((told) => `  It would work so: ${sentenceIn(told, options.units)}`),
  ]);
  return 3;
}

/** The parts of each by name; what is found of all of them once at the end. */
function tellAssemblies({
  tag,
  assemblies,
  models,
  system,
}: {
  readonly tag: string;
  readonly assemblies: readonly Assembly[];
  readonly models: readonly Model[];
  readonly system: UnitSystem;
}): readonly string[] {
  const names = new Map(models.map(({ number, name }) => [number, name]));
  const sentences = assemblies.map(({ findings }) =>
    findings.map((finding) => `  ${finding.severity}: ${withoutTag(sentenceIn(finding, system), [tag])}`),
  );
  const shared = (sentences[0] ?? []).filter((told) => sentences.every((others) => others.includes(told)));
  return [
    ...assemblies.flatMap((assembly, index) => [
      `${index + 1}. ${partNumbers(assembly)
        .map((number) => `${number} ${names.get(number) ?? ''}`)
        .join('; ')}`,
      ...(sentences[index] ?? []).filter((told) => !shared.includes(told)),
    ]),
    `For ${tag} in every case:`,
    ...shared,
  ];
}

async function tellPart(question: {
  readonly options: Options;
  readonly input: CommandInput;
  readonly lineDuty: LineDuty;
  readonly part: string;
}): Promise<number> {
  const { options, input, lineDuty, part } = question;
  const { tag } = lineDuty.line;
  const answer = explainPart({ lineDuty, site: input.site, models: houseModels(input.context), part });
  const lines = treeLines(answer.reasons, options.units);
  if (!options.without) {
    print(options, { tag, part, ...answer }, lines);
    return answer.fits ? 0 : 3;
  }
  const left = await leaveOutPart({ input: planInput(input), preference: options.prefer, part });
  const { currency } = houseFacts(input.context).pricing;
  print(options, { tag, part, ...answer, without: left ?? null }, [
    ...lines,
    ...(left === undefined ? notCarried(options) : leftOutLines(left, { currency, system: options.units })),
  ]);
  return answer.fits ? 0 : 3;
}

function notCarried({ part, prefer }: Options): readonly string[] {
  return [`The plan for ${prefer} does not carry ${part} on a drive line, so leaving it out changes nothing there.`];
}

function refuse(sentence: string): number {
  process.stderr.write(`${sentence}\n`);
  return 2;
}

function print(options: Options, answer: unknown, lines: readonly string[]): void {
  process.stdout.write(options.json ? `${jsonText(answer)}\n` : `${lines.join('\n')}\n`);
}
