/*
 * Whether a piece of another model may stand in for one of a plan: every line that uses it is put together anew with the other, and checked from scratch.
 * Invariant: it may only where the independent check finds nothing on any of those lines; the answer holds each line's new assembly, as its settings may differ.
 * Not here: whether a piece is free (lib/stock).
 * Read next: ../checking/check-assembly.ts, worked-out.ts.
 */
import { checkAssembly } from '#lib/checking/check-assembly.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Assembly, AssemblyParts } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { buildAssembly } from '#lib/kits/build-assembly.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import { pairDuties } from './pose-problem.ts';
import type { PlanOutcome } from './worked-out.ts';

export interface StandIn {
  readonly lines: readonly ScheduleLine[];
  readonly site: Site;
  /** Those of the plan and the one that stands in. */
  readonly models: readonly Model[];
  readonly outcome: Pick<PlanOutcome, 'lines' | 'assemblies'>;
  readonly gone: string;
  readonly standIn: string;
}

/** A line with the assembly it has now. */
export interface LineWithStandIn {
  readonly tag: string;
  readonly assembly: Assembly;
}

export function tryStandIn(asked: StandIn): Result<readonly LineWithStandIn[]> {
  const { gone, standIn, models } = asked;
  const [was, other] = [gone, standIn].map((number) => models.find((model) => model.number === number));
  if (was === undefined || other === undefined)
    return failed({
      code: 'no-such-model',
      sentence: `The catalogue has no model ${was === undefined ? gone : standIn}.`,
    });
  if (was.role !== other.role)
    return failed({
      code: 'stand-in-of-another-kind',
      sentence: `${standIn} is ${other.role} and ${gone} is ${was.role}: the one cannot stand in for the other.`,
    });
  const used = linesThatUse(asked);
  if (used.length === 0)
    return failed({
      code: 'stand-in-unjudged',
      sentence: `No line of the plan names ${gone}, so whether ${standIn} may stand in for it cannot be judged: take one of the same model.`,
    });
  const duties = pairDuties(asked.lines, assessDuties({ lines: asked.lines, site: asked.site }));
  const tried = used.map(({ tag, assembly }) => {
    const lineDuty = duties.find(({ line }) => line.tag === tag);
    return lineDuty === undefined
      ? failed(unknownLine(tag))
      : onLine({ asked, lineDuty, assembly, isDrive: was.role === 'drive' });
  });
  const no = tried.find((one) => !one.ok);
  if (no !== undefined && !no.ok) return no;
  return ok(tried.flatMap((one) => (one.ok ? [one.value] : [])));
}

function unknownLine(tag: string) {
  return {
    code: 'stand-in-unjudged',
    sentence: `The plan serves ${tag}, which its list does not hold: issue a revision.`,
  };
}

interface OnLine {
  readonly asked: StandIn;
  readonly lineDuty: LineDuty;
  readonly assembly: Assembly;
  readonly isDrive: boolean;
}

/** A drive is tried in each of its gears, the gear that was planned first: the other drive may number them in another way. */
function onLine({ asked, lineDuty, assembly, isDrive }: OnLine): Result<LineWithStandIn> {
  const { site, models, standIn } = asked;
  const { tag } = lineDuty.line;
  const drive = models.find(({ number }) => number === standIn);
  const gears = isDrive && drive?.role === 'drive' ? drive.facts.gears.map((_, index) => index) : [assembly.parts.gear];
  const ordered = gears.toSorted((a, b) => Number(b === assembly.parts.gear) - Number(a === assembly.parts.gear));
  const tried = ordered.map((gear) => {
    const parts = { ...withStandIn(assembly.parts, asked), gear };
    const built = buildAssembly({ lineDuty, site, models, parts });
    return { built, wrong: checkAssembly({ lineDuty, site, models, assembly: built }) };
  });
  const sound = tried.find(({ wrong }) => wrong.length === 0);
  if (sound !== undefined) return ok({ tag, assembly: sound.built });
  return failed({
    code: 'stand-in-refused',
    sentence: `${standIn} cannot stand in on ${tag}. ${tried[0]?.wrong[0]?.sentence ?? ''}`,
  });
}

/** Each line once, with each assembly in which it uses the piece. */
function linesThatUse({ outcome, gone }: StandIn): readonly LineWithStandIn[] {
  return outcome.lines.flatMap(({ tag, parts }) =>
    [...new Set(parts.map((part) => part.assembly))].flatMap((key) => {
      const assembly = outcome.assemblies[key];
      return assembly !== undefined && numbersIn(assembly.parts).includes(gone) ? [{ tag, assembly }] : [];
    }),
  );
}

function numbersIn(parts: AssemblyParts): readonly string[] {
  return [
    parts.drive,
    parts.head,
    ...parts.extensions,
    ...parts.adapters,
    ...(parts.adapterExtensions ?? []).flat(),
    parts.restraint,
    ...parts.options,
    ...parts.accessories.map(({ number }) => number),
  ];
}

function withStandIn(parts: AssemblyParts, { gone, standIn }: StandIn): AssemblyParts {
  const one = (number: string): string => (number === gone ? standIn : number);
  const { adapterExtensions } = parts;
  return {
    ...parts,
    drive: one(parts.drive),
    head: one(parts.head),
    extensions: parts.extensions.map(one),
    adapters: parts.adapters.map(one),
    ...(adapterExtensions === undefined ? {} : { adapterExtensions: adapterExtensions.map((all) => all.map(one)) }),
    restraint: one(parts.restraint),
    options: parts.options.map(one),
    accessories: parts.accessories.map(({ number, count }) => ({ number: one(number), count })),
  };
}
