/*
 * Builds a whole assembly from its parts: settings each way, figures, findings and the steps of the calculation sheet.
 * Invariant: the same line, site, models and parts give the same assembly.
 * Not here: choosing the parts (find-choices.ts).
 * Read next: steps/assembly-steps.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import type { Site } from '#lib/duty/site.ts';
import { selectOnDrive } from '#lib/engineering/direction.ts';
import type { Assembly, AssemblyFigures, AssemblyParts, DirectionSettings } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import { mustCount } from '#lib/rules/must-count.ts';
import { seatsOf } from '#lib/rules/ways-of-working.ts';
import { kilograms, seconds } from '#lib/units/quantity.ts';
import { assemblyFindings, chainModels } from './assembly-findings.ts';
import { counterTime, gripTime, mountTime, reactionTime, strokesTime } from './chain/chain-times.ts';
import { limiterSettings, NO_SETTINGS } from './chain/limiter-settings.ts';
import { coreChance } from './cores/core-chance.ts';
import { factsOf, type LineDuty } from './find-choices.ts';
import { type ResolvedChain, resolveParts } from './resolve-parts.ts';
import { assemblySteps } from './steps/assembly-steps.ts';

export interface BuildInput {
  readonly lineDuty: LineDuty;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly parts: AssemblyParts;
}

export function buildAssembly({ lineDuty, site, models, parts }: BuildInput): Assembly {
  const chain = resolveParts({ facts: factsOf({ ...lineDuty, site }), models, parts });
  const opening = directionSettings(chain, 'opening');
  const closing = directionSettings(chain, 'closing');
  const figures = figuresOf(chain);
  return {
    id: assemblyId(parts),
    parts,
    opening,
    closing,
    figures,
    findings: assemblyFindings(chain),
    steps: assemblySteps({ whole: chain.whole, opening, closing, figures }),
  };
}

export function assemblyId(parts: AssemblyParts): string {
  const accessories = parts.accessories.map(({ number, count }) => (count === 1 ? number : `${number}*${count}`));
  return [
    `${parts.drive}:${parts.gear}`,
    parts.head,
    ...parts.options,
    ...parts.adapters.flatMap((adapter, index) => [...(parts.adapterExtensions?.[index] ?? parts.extensions), adapter]),
    parts.restraint,
    ...accessories,
  ].join('+');
}

function directionSettings({ whole, limiterUpTo }: ResolvedChain, direction: Direction): DirectionSettings {
  const { core, duty } = whole;
  const { limiter } = core.figures;
  const limits = limiter !== null && (limiter.bothDirections || direction === 'opening');
  const settings = limits
    ? limiterSettings({ limiter, duty: duty[direction], direction, upTo: limiterUpTo, seats: seatsOf(whole) })
    : NO_SETTINGS;
  const way = core.figures[direction];
  return {
    ...settings,
    strokeTime: way.strokeTime,
    speed: way.speed,
    select: selectOnDrive({
      movement: direction,
      closes: duty.closes,
      reversals: core.head.facts.reverses ? 1 : 0,
    }),
  };
}

function figuresOf({ whole, accessories }: ResolvedChain): AssemblyFigures {
  const { core, reaction, restraint, secondChain, links } = whole;
  const { figures } = core;
  const pieces = [...chainModels(whole).map((model) => ({ model, count: 1 })), ...accessories];
  const grip = gripTime({ elements: links });
  const setUpTime = seconds(
    mountTime(core) + counterTime(core.counter) + grip + reactionTime({ restraint, secondChain }),
  );
  return {
    stallAtValve: figures.stallAtValve,
    highestAtValve: figures.highestAtValve,
    sureAtValve: figures.sureAtValve,
    totalRatio: figures.totalRatio,
    limiterRequired: figures.limiterRequired,
    counterRequired: mustCount(whole),
    reactionForce: reaction.force,
    sideLoad: reaction.sideLoad,
    energyPerVisit: figures.energyPerVisit,
    setUpTime,
    timePerValve: seconds(setUpTime + strokesTime({ facts: whole, core })),
    mass: kilograms(pieces.reduce((sum, { model, count }) => sum + model.mass * count, 0)),
    heaviestPiece: kilograms(Math.max(...pieces.map(({ model }) => model.mass))),
    chance: coreChance({ facts: whole, core }),
  };
}
