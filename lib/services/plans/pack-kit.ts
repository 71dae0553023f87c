/*
 * Packs what one crew carries into cases, and has the packing checked.
 * Invariant: what the independent check disagrees with is never handed out.
 * Not here: which serial numbers are held (stock) and how cases are told (papers-of.ts, crew-days-of.ts).
 * Read next: ../../packing/pack-cases.ts.
 */
import { checkPacking } from '#lib/checking/check-packing.ts';
import type { ItemNeed } from '#lib/equipment/choices.ts';
import type { Model } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { caseKinds } from '#lib/packing/case-kinds.ts';
import { type PackedLoad, type PackingInput, packCases } from '#lib/packing/pack-cases.ts';
import { pieceOf } from '#lib/packing/piece.ts';

interface KitPacking extends Pick<PackingInput, 'liftLimit' | 'transport'> {
  readonly items: readonly ItemNeed[];
  readonly models: readonly Model[];
  /** The next serial number of a model; null where none is held. */
  readonly nextSerial: (number: string) => string | null;
}

export function packKit({ items, models, nextSerial, liftLimit, transport }: KitPacking): PackedLoad {
  const byNumber = new Map(models.map((model) => [model.number, model]));
  const pieces = items.flatMap(({ item, count }) => {
    const model = byNumber.get(item);
    return model ? Array.from({ length: count }, () => pieceOf({ model, serial: nextSerial(item) })) : [];
  });
  const cases = caseKinds(models);
  const packed = packCases({ pieces, liftLimit, cases, transport });
  const wrong = checkPacking({ items, models, liftLimit, cases, packed: packed.cases });
  invariant(
    wrong.length === 0,
    `The independent check does not agree with the packing: ${wrong.map(({ sentence }) => sentence).join(' ')}`,
  );
  return packed;
}
