/*
 * What each way of transport asks of a whole load, so that the yard sees before loading which way is open.
 * Invariant: nothing is called free of rules that one of its cases is under; the carrier's own word comes on top.
 * Not here: the lines of a single case (dangerous-goods.ts).
 * Read next: consignment.ts.
 */
import type { Kilograms } from '#lib/units/quantity.ts';
import { type DangerousGoods, dangerousGoods, type Transport } from './dangerous-goods.ts';
import type { Piece } from './piece.ts';

export const TRANSPORT_WAYS = ['road', 'sea', 'air'] as const satisfies readonly Transport[];

export interface RouteCheck {
  readonly transport: Transport;
  readonly standing: 'no dangerous goods' | 'with marks' | 'in full' | 'ask the carrier first';
  /** Numbers of the cases it speaks of. */
  readonly cases: readonly number[];
  readonly sources: readonly string[];
}

interface Weighed {
  readonly number: number;
  readonly pieces: readonly Piece[];
  readonly gross: Kilograms;
}

export function routeChecks(cases: readonly Weighed[]): readonly RouteCheck[] {
  return TRANSPORT_WAYS.map((transport) => {
    const told = cases.map((one) => ({ number: one.number, goods: dangerousGoods({ ...one, transport }) }));
    const ruled = told.filter(({ goods }) => goods.some((line) => isUnderRules(line, transport)));
    const lines = ruled.flatMap(({ goods }) => goods.filter((line) => isUnderRules(line, transport)));
    return {
      transport,
      standing: standingOf(lines, transport),
      cases: ruled.map(({ number }) => number),
      sources: [...new Set(lines.map(({ source }) => source))],
    };
  });
}

/** A drained machine is free of rules on the road only. */
function isUnderRules({ id, route }: DangerousGoods, transport: Transport): boolean {
  return route !== 'outside' || (id === 'drained petrol machine' && transport !== 'road');
}

function standingOf(lines: readonly DangerousGoods[], transport: Transport): RouteCheck['standing'] {
  if (lines.length === 0) return 'no dangerous goods';
  if (transport === 'air' || lines.some(({ id }) => id === 'drained petrol machine')) return 'ask the carrier first';
  return lines.some(({ route }) => route === 'full') ? 'in full' : 'with marks';
}
