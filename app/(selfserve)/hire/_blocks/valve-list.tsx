import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { Language } from '#lib/wording/language.ts';
import { tellerFor } from '#lib/wording/told-in.ts';
import { say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import { ListFields } from './list-fields.tsx';
import sheetLook from './sheet.module.css';
import toldLook from './told.module.css';

interface ListProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** Valves that have no answer yet, rows that were not taken, and how more come in. */
export function ValveList({ order, token, language }: ListProps) {
  if (!order.mayChange && order.answer !== null) return null;
  return (
    <section className={sheetLook.sheet} aria-labelledby="valves">
      <h2 id="valves">{say(language, order.answer === null ? 'order.valves' : 'start.list-title')}</h2>
      {order.valves.length === 0 && <p>{say(language, 'order.empty')}</p>}
      {order.answer === null && order.valves.length > 0 && (
        <ul className={toldLook.tags}>
          {order.valves.map(({ lineId, tag }) => (
            <li key={lineId}>
              <a href={hirePaths.valve(token, lineId)}>{tag}</a>
            </li>
          ))}
        </ul>
      )}
      <NotTaken order={order} language={language} />
      {order.mayChange && (
        <>
          <form method="post" action={hirePaths.deed(token, 'valve')}>
            <button type="submit" className={`button ${formLook.wide}`}>
              {say(language, 'order.add')}
            </button>
          </form>
          <details>
            <summary>{say(language, 'order.add-list')}</summary>
            <form method="post" action={hirePaths.deed(token, 'list')} encType="multipart/form-data">
              <ListFields language={language} />
              <button type="submit" className={`button ${formLook.wide}`}>
                {say(language, 'start.list-go')}
              </button>
            </form>
          </details>
        </>
      )}
    </section>
  );
}

function NotTaken({ order, language }: Pick<ListProps, 'order' | 'language'>) {
  if (order.notTaken.length === 0) return null;
  const { told } = tellerFor({ language });
  const rows = order.notTaken.map(({ row, reason }) => ({ row, reason, ...told(reason) }));
  return (
    <details>
      <summary>
        {say(language, 'order.not-taken')} ({order.notTaken.length})
      </summary>
      <ul>
        {rows.map(({ row, reason, text, language: spoken }) => (
          <li key={`${row} ${reason}`} lang={spoken}>
            {say(spoken, 'order.row', { row, reason: text })}
          </li>
        ))}
      </ul>
    </details>
  );
}
