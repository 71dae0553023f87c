import type { CaseView, PackedContent } from '#lib/services/yard/packing/open-packing.ts';

interface CaseCardProps {
  readonly box: CaseView;
  readonly of: number;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
  readonly onOut: (code: string) => void;
}

/** One case: how heavy it is by now and will be, who lifts it, what goes in from the bottom up. */
export function CaseCard({ box, of, isChosen, onChoose, onOut }: CaseCardProps) {
  const isLoose = box.name === 'loose';
  const title = `${isLoose ? 'Loose piece' : 'Case'} ${box.number} of ${of}`;
  const tone = box.lift === 'two persons' || box.lift === 'lifting aid' ? 'mark warning' : 'mark';
  return (
    <section className={isChosen ? 'card chosen' : 'card'} aria-label={title}>
      <div className="case-head">
        <h2>{title}</h2>
        {!isLoose && <span className="soft">{box.name}</span>}
        <span className="soft">crew {box.crew}</span>
      </div>
      <p className="case-head">
        <span className="mass">{kilograms(box.mass_kg)}</span>
        <span className={tone}>Lift: {box.lift}</span>
        {!isLoose && <span className="soft">{kilograms(box.now_kg)} in it now</span>}
        {box.centre_m !== null && (
          <span className="soft">centre {Math.round(box.centre_m * 100)} cm above the floor</span>
        )}
        {box.energy_wh > 0 && <span className="soft">{Math.round(box.energy_wh)} Wh</span>}
      </p>
      {box.goods.length > 0 && (
        <ul className="goods">
          {box.goods.map(({ id, sentence, source, marks }) => (
            <li key={id}>
              {sentence} {marks.length > 0 && <strong>On the case: {marks.join('; ')}.</strong>}{' '}
              <small className="soft">{source}</small>
            </li>
          ))}
        </ul>
      )}
      <Contents contents={box.contents} onOut={onOut} />
      {!isLoose && (
        <button type="button" aria-pressed={isChosen} onClick={onChoose}>
          {isChosen ? `Packing into case ${box.number}` : `Pack into case ${box.number}`}
        </button>
      )}
    </section>
  );
}

interface ContentsProps {
  readonly contents: readonly PackedContent[];
  readonly onOut: ((code: string) => void) | null;
}

export function Contents({ contents, onOut }: ContentsProps) {
  if (contents.length === 0) return <p className="soft">Nothing goes in yet.</p>;
  return (
    <ol className="case-contents">
      {contents.map((piece) => (
        <li key={piece.code}>
          <div className="what">
            <strong className="tag">{piece.serial ?? `${piece.count} × ${piece.code}`}</strong> {piece.name}
          </div>
          <span className="soft">{kilograms(piece.mass_kg)}</span>
          <ContentMark piece={piece} />
          {piece.packed && onOut !== null && (
            <button
              type="button"
              className="quiet"
              onClick={() => onOut(piece.serial ?? `MODEL:${piece.code}`)}
              aria-label={`Take out ${piece.code}`}
            >
              Take out
            </button>
          )}
        </li>
      ))}
    </ol>
  );
}

function ContentMark({ piece }: { readonly piece: PackedContent }) {
  if (piece.packed) return <span className="mark good">✓ packed</span>;
  return piece.picked ? <span className="mark">to pack</span> : <span className="mark warning">not picked</span>;
}

function kilograms(value: number): string {
  return `${(Math.round(value * 10) / 10).toFixed(1)} kg`;
}
