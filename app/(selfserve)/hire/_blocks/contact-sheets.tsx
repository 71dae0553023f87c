import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import { Choice, Field } from './frame-blocks.tsx';
import sheetLook from './sheet.module.css';

interface SheetProps {
  readonly order: OrderView;
  readonly token: string;
  readonly language: Language;
}

/** A firm answer becomes a quote once somebody says who asks. */
export function MakeFirmSheet({ order, token, language }: SheetProps) {
  const isQuoted = order.stage === 'quoted' && order.quote?.standing === 'open';
  if (order.answer?.firm !== true || !order.mayChange || isQuoted) return null;
  return (
    <form method="post" action={hirePaths.deed(token, 'quote')} className={sheetLook.sheet} aria-labelledby="make-firm">
      <h2 id="make-firm">{say(language, 'quote.ask-title')}</h2>
      <p>{say(language, 'quote.ask-lead')}</p>
      <ContactFields prefix="quote" contact={order.contact} language={language} />
      <button type="submit" className={`button main ${formLook.wide}`}>
        {say(language, 'quote.ask')}
      </button>
    </form>
  );
}

/** Always there, closed where the answer is firm: a person of the house may be asked at any time. */
export function HandOverSheet({ order, token, language }: SheetProps) {
  if (!order.mayChange || order.valves.length === 0) return null;
  const marked = order.answer?.valves.filter(({ handOver }) => handOver.length > 0).length ?? 0;
  const some = marked > 0 && marked < order.valves.length;
  return (
    <details className={sheetLook.sheet} open={order.answer?.firm === false || order.work === 'failed'}>
      <summary className={sheetLook.summary}>{say(language, 'desk.title')}</summary>
      <form method="post" action={hirePaths.deed(token, 'hand-over')}>
        <p>{say(language, 'desk.lead')}</p>
        {some && (
          <Choice
            name="which"
            legend={say(language, 'desk.title')}
            chosen="marked"
            options={[
              { value: 'marked', words: say(language, 'desk.marked') },
              { value: 'all', words: say(language, 'desk.all') },
            ]}
          />
        )}
        <ContactFields prefix="desk" contact={order.contact} language={language} />
        <Field name="message" label={say(language, 'contact.message')}>
          <textarea id="message" name="message" rows={3} maxLength={2000} />
        </Field>
        <button type="submit" className={`button main ${formLook.wide}`}>
          {say(language, 'desk.go')}
        </button>
      </form>
    </details>
  );
}

interface ContactProps {
  readonly prefix: string;
  readonly contact: OrderView['contact'];
  readonly language: Language;
}

function ContactFields({ prefix, contact, language }: ContactProps) {
  const fields = [
    { name: 'name', type: 'text', complete: 'name', most: 120, required: true },
    { name: 'firm', type: 'text', complete: 'organization', most: 120, required: true },
    { name: 'email', type: 'email', complete: 'email', most: 200, required: true },
    { name: 'telephone', type: 'tel', complete: 'tel', most: 60, required: false },
  ] as const;
  return fields.map(({ name, type, complete, most, required }) => (
    <Field key={name} name={`${prefix}-${name}`} label={say(language, `contact.${name}`)}>
      <input
        id={`${prefix}-${name}`}
        name={name}
        type={type}
        autoComplete={complete}
        maxLength={most}
        required={required}
        defaultValue={contact[name] ?? ''}
      />
    </Field>
  ));
}
