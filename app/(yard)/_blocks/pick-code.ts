import type { PickLine } from '#lib/services/yard/picking/pick-lines.ts';
import { modelCode } from '#lib/stock/scan-code.ts';

/** What the label of a line carries: the piece's own, or that of the box of counted pieces. */
export function scanCode({ kind, code }: Pick<PickLine, 'kind' | 'code'>): string {
  return kind === 'unit' ? code : modelCode(code);
}
