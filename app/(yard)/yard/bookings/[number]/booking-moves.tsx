import { ShownDate, ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { BookingView } from '#lib/services/yard/open-booking.ts';

/** What happened, the newest first; notices and extensions stand above, because they are asked for. */
export function BookingMoves({ view }: { readonly view: BookingView }) {
  return (
    <section className="card" aria-label="What happened">
      <h2>What happened</h2>
      {view.notices.length > 0 && (
        <ul className="findings">
          {view.notices.map((notice) => (
            <li key={notice.number}>
              <strong>Off-hire notice {notice.number}</strong>: <ShownMoment at={notice.noticed_at} />, said by{' '}
              {notice.said_by}, taken down by {notice.who}.{notice.note === '' ? '' : ` ${notice.note}`}
            </li>
          ))}
        </ul>
      )}
      {view.extensions.length > 0 && (
        <ul className="findings">
          {view.extensions.map((extension) => (
            <li key={extension.id}>
              <strong>Extended</strong> from before <ShownDate on={extension.ended_before} /> to before{' '}
              <ShownDate on={extension.ends_before} />
              {extension.asked_by === '' ? '' : `, asked for by ${extension.asked_by}`}.
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>All {view.moves.length} steps</summary>
        <ol className="yard-rows" reversed>
          {view.moves.toReversed().map((move) => (
            <li key={move.id}>
              <span>
                <strong>{move.unit_serial ?? 'Booking'}</strong> {move.what}
                {move.why === '' ? '' : `: ${move.why}`}
                {move.detail === '' ? null : <small className="beside">{move.detail}</small>}
              </span>
              <span className="soft">
                <ShownMoment at={move.at} />, {move.who}
              </span>
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}
