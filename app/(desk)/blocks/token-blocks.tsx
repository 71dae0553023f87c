const COLOURS = [
  { name: '--paper', says: 'the ground' },
  { name: '--sheet', says: 'what is written on' },
  { name: '--sunk', says: 'troughs, what is off' },
  { name: '--ink', says: 'words' },
  { name: '--ink-soft', says: 'words beside' },
  { name: '--rule', says: 'hairlines' },
  { name: '--rule-strong', says: 'edges of what can be used' },
  { name: '--accent', says: 'what acts' },
  { name: '--accent-wash', says: 'chosen, hovered' },
  { name: '--attention', says: 'asks for attention' },
  { name: '--refusal', says: 'refuses' },
  { name: '--good', says: 'is well' },
] as const;

const SIZES = ['--head', '--title', '--text', '--small', '--tiny'] as const;
const SPACES = ['--space-1', '--space-2', '--space-3', '--space-4', '--space-5', '--space-6'] as const;

/** Colours, sizes of type and spaces as they stand in house.css. */
export function TokenBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-tokens">
      <h2 id="blocks-tokens">Colour, type, space</h2>
      <ul className="swatches">
        {COLOURS.map(({ name, says }) => (
          <li key={name}>
            <span className="swatch" style={{ background: `var(${name})` }} />
            <code>{name}</code> <small>{says}</small>
          </li>
        ))}
      </ul>
      <div className="columns">
        <div>
          {SIZES.map((size) => (
            <p key={size} style={{ fontSize: `var(${size})` }}>
              Ceiling 117 N·m <code>{size}</code>
            </p>
          ))}
        </div>
        <div>
          {SPACES.map((space) => (
            <p key={space} className="space">
              <span className="bar-of" style={{ width: `var(${space})` }} />
              <code>{space}</code>
            </p>
          ))}
        </div>
      </div>
      <hr />
    </section>
  );
}
