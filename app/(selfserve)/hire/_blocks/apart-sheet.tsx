import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import sheetLook from './sheet.module.css';

interface ApartProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** Valves that were handed over apart: how the house stands with them, and the way there. */
export function ApartSheet({ order, token, language }: ApartProps) {
  if (order.apart.length === 0) return null;
  return (
    <section className={sheetLook.sheet} aria-labelledby="apart">
      <h2 id="apart">{say(language, 'apart.title')}</h2>
      {order.apart.map(({ number, stage }) => (
        <form key={number} method="post" action={hirePaths.deed(token, 'part')}>
          <p>{say(language, stage === 'handed over' ? 'apart.waits' : 'apart.back', { number })}</p>
          {order.mayAct && (
            <button type="submit" name="part" value={number} className="button">
              {say(language, 'apart.open', { number })}
            </button>
          )}
        </form>
      ))}
    </section>
  );
}
