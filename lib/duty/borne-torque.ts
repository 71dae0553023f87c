/*
 * Bounds that are guessed against what the valve is said to be moved with: it bears that much already.
 * Invariant: only a bound that is assumed or a rule of thumb is raised, never a stated, standard or computed one; a raise is a finding.
 * Not here: the bounds themselves (torque-bounds.ts, stem-bounds.ts).
 * Read next: never-exceed.ts.
 */
import { inUsUnits } from '#lib/units/format-quantity.ts';
import { basisRank, type Known } from '#lib/units/known-value.ts';
import { figure } from '#lib/units/say-figure.ts';
import type { TorqueBound } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { combine, note, type Sheet, term } from './sheet.ts';
import { strengthLeft } from './torque-bounds.ts';
import type { ValveCharacter } from './valve-character.ts';

export function raiseGuessedBounds({
  bounds,
  line,
  character,
  sheet,
}: {
  readonly bounds: readonly TorqueBound[];
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly sheet: Sheet;
}): readonly TorqueBound[] {
  const borne = borneTorque({ line, character });
  if (borne === null) return bounds;
  const raised = bounds.map((bound) =>
    isGuessed(bound.torque) && bound.torque.low < borne.torque ? raise(sheet, bound, borne) : bound,
  );
  const lifted = bounds.filter((bound, index) => bound !== raised[index]);
  if (lifted.length > 0) {
    const lows = lifted.map(({ torque }) => torque.low);
    const newtonMetres = (value: number) => figure({ si: `${Math.round(value)} N·m`, us: inUsUnits('N·m', value) });
    note(sheet, {
      id: 'bound-below-stated-torque',
      severity: 'warning',
      about: ['starting_torque', 'max_torque'],
      sentence: `By ${lifted.map(({ kind }) => kind).join(', ')} the valve might bear no more than ${figure({ si: `${lows.map(Math.round).join(', ')} N·m`, us: lows.map((low) => inUsUnits('N·m', low)).join(', ') })}, which is guessed, yet it is said to take ${newtonMetres(borne.said)}: what is said counts, and ${newtonMetres(borne.torque)} is taken as borne. Ask for the highest torque that is allowed.`,
      source: 'house rule: a better basis replaces a worse one',
    });
  }
  return raised;
}

const RAISED = 'Raised to what a valve bears that is said to be moved so hard';

/** Whether a bound rests on the torque that is said, so that it falls where less is read. */
export function isRaisedBound({ source }: Known<'N·m'>): boolean {
  return source.includes(RAISED);
}

interface Borne {
  readonly said: number;
  readonly torque: number;
}

/** What it is said to take, and the margin that a sound valve has above it. */
function borneTorque({
  line,
  character,
}: {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
}): Borne | null {
  const said = line.torque.starting ?? line.torque.running;
  if (said === undefined || basisRank(said.basis) > basisRank('stated') || said.low <= 0) return null;
  const isOld = strengthLeft(character).low < 1;
  return { said: said.low, torque: said.low * (isOld ? 1 : HOUSE_CONSTANTS.borneMargin.nominal) };
}

function isGuessed({ basis }: Known<'N·m'>): boolean {
  return basis === 'assumed' || basis === 'rule of thumb';
}

function raise(sheet: Sheet, bound: TorqueBound, { torque }: Borne): TorqueBound {
  const source = `${RAISED}: ${bound.torque.source}`;
  return {
    ...bound,
    torque: combine(sheet, {
      unit: 'N·m',
      origin: { basis: bound.torque.basis, source },
      terms: { bound: term('T', bound.kind, bound.torque) },
      evaluate: (at) => Math.max(at('bound'), torque),
    }),
  };
}
