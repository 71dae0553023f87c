/* The packing of a load as an integer program, written from the pieces anew: every filling a case could have is a column, and each piece goes into one. */
import type { CaseSize } from '#lib/equipment/model.ts';
import { type Entry, type SparseModel, startModel } from '#lib/milp/sparse-model.ts';
import type { CaseKind } from '#lib/packing/case-kinds.ts';
import type { Piece } from '#lib/packing/piece.ts';

export interface CaseProgramInput {
  readonly pieces: readonly Piece[];
  readonly cases: readonly CaseKind[];
  readonly onePerson: number;
  readonly twoPersons: number;
}

/** Share of the inside that may be filled, as lib/packing states it. */
const FILL = 0.7;

/** Null where there are more fillings than that. */
export function caseProgram(input: CaseProgramInput, most: number): SparseModel | null {
  const pieces = input.pieces.filter((piece) => holds(input, [piece]));
  const fillings = new Set<string>();
  const grow = (chosen: readonly number[], from: number): boolean => {
    if (fillings.size > most) return false;
    if (chosen.length > 0) fillings.add(chosen.join(' '));
    for (let next = from; next < pieces.length; next += 1) {
      const more = [...chosen, next];
      // Less of the same always fits as well, but for a case for two, which must keep the piece that needs it: those come first.
      const inside = more.flatMap((at) => pieces[at] ?? []);
      if (holds(input, inside) && !grow(more, next + 1)) return false;
    }
    return true;
  };
  pieces.sort((a, b) => Number(forOne(input, a)) - Number(forOne(input, b)));
  if (!grow([], 0)) return null;
  const builder = startModel();
  const rows = pieces.map((): Entry[] => []);
  for (const filling of fillings) {
    const column = builder.column({ cost: 1, lower: 0, upper: 1, integer: true });
    for (const at of filling.split(' ')) rows[Number(at)]?.push([column, 1]);
  }
  for (const entries of rows) builder.row({ lower: 1, upper: 1, entries });
  return builder.build();
}

/** Is there a case, for one or where it must be for two, that takes all of them. */
function holds(input: CaseProgramInput, pieces: readonly Piece[]): boolean {
  const isForTwo = pieces.some((piece) => !forOne(input, piece));
  return input.cases.some((kind) => takes({ kind, limit: isForTwo ? input.twoPersons : input.onePerson, pieces }));
}

function forOne({ cases, onePerson }: CaseProgramInput, piece: Piece): boolean {
  return cases.some((kind) => takes({ kind, limit: onePerson, pieces: [piece] }));
}

interface Taking {
  readonly kind: CaseKind;
  readonly limit: number;
  readonly pieces: readonly Piece[];
}

function takes({ kind, limit, pieces }: Taking): boolean {
  const mass = pieces.reduce((sum, piece) => sum + piece.mass, Number(kind.mass));
  const filled = pieces.reduce((sum, piece) => sum + volume(piece.size), 0);
  const room = long(kind.size);
  return (
    mass <= limit + 1e-6 &&
    filled <= FILL * volume(kind.size) + 1e-9 &&
    pieces.every((piece) => long(piece.size).every((edge, at) => edge <= (room[at] ?? 0) + 1e-9))
  );
}

function long({ length, width, height }: CaseSize): readonly number[] {
  return [length, width, height].sort((a, b) => b - a);
}

function volume({ length, width, height }: CaseSize): number {
  return length * width * height;
}
