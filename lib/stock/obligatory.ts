/*
 * What may not be left behind: pieces that the rules make obligatory for the machines that go, and why each is.
 * Invariant: a booking with one of them missing never counts as picked.
 * Not here: how many the plan asks for (lib/kits), and what was picked (lib/services/yard/picking).
 * Read next: pick-scan.ts.
 */
import type { Model } from '#lib/equipment/model.ts';

/** Mains at the place; absent where the site did not say. */
export interface PlaceMains {
  readonly voltage?: number | undefined;
  readonly plug?: string | undefined;
}

/** Why a piece has to go; null where the job could be done without it. */
export function whyObligatory({ model, mains }: { readonly model: Model; readonly mains: PlaceMains }): string | null {
  switch (model.role) {
    case 'restraint':
      return 'No drive is held by hand: something takes the reaction.';
    case 'option':
      return model.facts.kind === 'torque limiter'
        ? 'A torque limiter is required on lines of this job.'
        : 'A turns counter is required on lines of this job.';
    case 'accessory':
      return accessoryReason({ kind: model.facts.kind, mains });
    default:
      return null;
  }
}

function accessoryReason({
  kind,
  mains,
}: {
  readonly kind: Extract<Model, { readonly role: 'accessory' }>['facts']['kind'];
  readonly mains: PlaceMains;
}): string | null {
  switch (kind) {
    case 'charger':
      return `The packs are charged at the place${tellMains(mains)}.`;
    case 'air hose':
      return 'The air drive is fed through it.';
    case 'hose restraint':
      return 'A hose that comes off whips: every joint is held.';
    case 'filter-regulator-lubricator':
    case 'dry filter-regulator':
      return 'The air drive gets its pressure and its clean air from it.';
    case 'retaining pins':
      return 'Without its pin a part falls off the square.';
    case 'lanyards':
      return 'What can fall is tied.';
    case 'second chain':
      return 'The work goes both ways and a chain holds one way only.';
    case 'sling support':
      return 'It holds the drive up where the wheel faces sideways or down.';
    case 'key guide':
      return 'A long key is guided.';
    case 'flame arrester':
      return 'The exhaust of a petrol drive carries one.';
    case 'pegs':
      return 'The peg plate turns the wheel by them.';
    default:
      return null;
  }
}

function tellMains({ voltage, plug }: PlaceMains): string {
  const parts = [...(voltage === undefined ? [] : [`${voltage} V`]), ...(plug === undefined ? [] : [plug])];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

export interface ObligatoryNeed {
  readonly number: string;
  readonly name: string;
  readonly count: number;
  readonly why: string;
}

/** What of it lacks, each in a sentence. */
export function missingObligatory({
  needs,
  picked,
}: {
  readonly needs: readonly ObligatoryNeed[];
  /** Pieces picked, by the model that was planned. */
  readonly picked: ReadonlyMap<string, number>;
}): readonly string[] {
  return needs.flatMap(({ number, name, count, why }) => {
    const lacks = count - (picked.get(number) ?? 0);
    return lacks <= 0 ? [] : [`${lacks} × ${number} ${name}: ${why}`];
  });
}
