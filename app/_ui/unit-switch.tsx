import { chooseUnits } from '#app/_lib/choose-units.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

const SYSTEMS = [
  { value: 'si', label: 'SI', name: 'SI units' },
  { value: 'us', label: 'US', name: 'US customary units' },
] as const;

/** Which units the screens show; a plain form, so that it works before any script has loaded. */
export function UnitSwitch({ system }: { readonly system: UnitSystem }) {
  return (
    <form action={chooseUnits} className="unit-switch" aria-label="Units shown">
      {SYSTEMS.map(({ value, label, name }) => (
        <button
          key={value}
          type="submit"
          name="units"
          value={value}
          aria-label={name}
          title={`Show ${name}`}
          aria-pressed={system === value}
        >
          {label}
        </button>
      ))}
    </form>
  );
}
