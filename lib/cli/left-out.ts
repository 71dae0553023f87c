/*
 * Says in sentences what a plan would lose without a part.
 * Invariant: a difference that rests on an unproven plan is called an estimate.
 * Not here: working it out (../planning/leave-out-part.ts).
 * Read next: why-command.ts.
 */
import { massIn } from '#lib/documents/words/print-values.ts';
import { currencyDecimals } from '#lib/money/currency.ts';
import type { PartLeftOut } from '#lib/planning/leave-out-part.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

const TAGS_TOLD = 8;

export function leftOutLines(
  left: PartLeftOut,
  { currency, system }: { readonly currency: string; readonly system: UnitSystem },
): readonly string[] {
  const decimals = currencyDecimals(currency);
  const money = (minor: number) => `${(minor / 10 ** decimals).toFixed(decimals)} ${currency}`;
  const more = left.used_for.length - TAGS_TOLD;
  const mass = massIn(left.extra_mass_kg, system);
  const lost = left.valves_lost;
  const cost = left.extra_cost_minor;
  return [
    `The plan carries ${left.carried} × ${left.part}, for ${left.used_for.slice(0, TAGS_TOLD).join(', ')}${more > 0 ? ` and ${more} lines more` : ''}.`,
    `Without it ${lost === 0 ? 'as many valves are served' : `${lost} ${lost === 1 ? 'valve' : 'valves'} fewer would be served`}: hire and time come to ${money(
      Math.abs(cost),
    )} ${cost < 0 ? 'less' : 'more'}, ${signed(left.extra_hours)} h, ${signed(mass.value)} ${mass.unit}.`,
    ...(left.instead.length > 0
      ? [`Instead it would carry ${left.instead.map(({ item, count }) => `${count} × ${item}`).join(', ')}.`]
      : []),
    left.is_exact
      ? 'Both plans are proven best, so the difference is exact.'
      : 'Not both plans are proven best, so the difference is an estimate.',
  ];
}

function signed(value: number): string {
  const size = Math.abs(value).toFixed(1);
  return `${value < 0 && size !== '0.0' ? '−' : '+'}${size}`;
}
