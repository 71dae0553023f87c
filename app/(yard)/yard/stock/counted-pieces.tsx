import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { Context } from '#lib/services/context.ts';
import { type CountedModel, listCounted } from '#lib/services/stock/counted.ts';
import { CountForm } from './count-form.client.tsx';

/** Pieces without serial numbers: how many lie where, how many are free today, and correcting the number. */
export function CountedPieces({ context }: { readonly context: Context }) {
  const counted = listCounted(context);
  if (!counted.ok) return <p className="notice refusal">{counted.reason.sentence}</p>;
  const { models, mayChange } = counted.value;
  return (
    <div className="columns">
      {models.map((model) => (
        <section key={model.model} className="card" aria-label={model.name}>
          <h2>
            <span>
              {model.model} {model.name}
            </span>
            <span className="soft">{model.freeToday} free today</span>
          </h2>
          <ul className="yard-rows">
            {model.shelves.map((shelf) => (
              <li key={shelf.depot}>
                <span>
                  <strong>{shelf.count}</strong> at {shelf.depot}
                  {shelf.bay === '' ? '' : ` ${shelf.bay}`}
                </span>
                {mayChange && <CountForm model={model.model} {...shelf} />}
              </li>
            ))}
          </ul>
          <History model={model} />
        </section>
      ))}
    </div>
  );
}

function History({ model }: { readonly model: CountedModel }) {
  if (model.history.length === 0) return null;
  return (
    <details>
      <summary>Why the number changed</summary>
      <ul className="findings">
        {model.history.map((event) => (
          <li key={event.id}>
            {event.depot}: {event.before} → {event.after}, {event.reason} {event.reference}
            <small className="beside">
              {event.who}, <ShownMoment at={event.at} />
            </small>
          </li>
        ))}
      </ul>
    </details>
  );
}
