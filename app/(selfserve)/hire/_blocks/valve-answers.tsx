import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderAnswer } from '#lib/services/self-service/order-answer.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { ToldRange, ValveResult } from '#lib/services/self-service/valve-answer.ts';
import { durationIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say, type WordingKey } from '#lib/wording/wording.ts';
import look from './hire.module.css';
import { pieceName } from './piece-name.tsx';
import { Picture, textOf } from './question-form.tsx';

interface AnswersProps {
  readonly order: OrderView;
  readonly answer: OrderAnswer;
  readonly token: string;
  readonly language: Language;
}

/** Valves whose drawing is shown open; of a long list each opens by itself. */
const OPEN_UP_TO = 2;

/** What is moved under the finger must be reached and moved by keyboard too. */
const SCROLLS = { tabIndex: 0 } as const;

export function ValveAnswers({ order, answer, token, language }: AnswersProps) {
  return (
    <section className={look.sheet} aria-labelledby="valves-answered">
      <h2 id="valves-answered">{say(language, 'order.valves')}</h2>
      {answer.valves.map((valve) => (
        <details
          key={valve.lineId}
          className={look.valve}
          open={order.stage !== 'accepted' && answer.valves.length <= OPEN_UP_TO}
        >
          <summary>
            <strong>{valve.tag}</strong>
            <span className={valve.handOver.length === 0 ? look.firm : look.open}>
              {say(language, valve.handOver.length === 0 ? 'result.firm' : 'result.not-firm')}
            </span>
          </summary>
          <ValveAnswer valve={valve} language={language} />
          {order.mayChange && (
            <a className="button" href={hirePaths.valve(token, valve.lineId)}>
              {say(language, 'order.ask')}
            </a>
          )}
        </details>
      ))}
    </section>
  );
}

function ValveAnswer({ valve, language }: { readonly valve: ValveResult; readonly language: Language }) {
  const { kit, assumed } = valve;
  return (
    <>
      {valve.qty > 1 && <p>{say(language, 'order.qty', { count: valve.qty })}</p>}
      <Ranges valve={valve} language={language} />
      {kit !== null && (
        <>
          <section
            className={look.scroll}
            {...SCROLLS}
            aria-label={say(language, 'result.drawing', { tag: valve.tag })}
          >
            <Picture drawing={kit.drawing} label={kit.pieces.map((piece) => pieceName(piece, language)).join(', ')} />
          </section>
          <p>
            {say(language, 'result.can', {
              sure: Math.floor(kit.sure_nm),
              low: durationIn(kit.stroke_s.low),
              high: durationIn(kit.stroke_s.high),
            })}
          </p>
          <p>{say(language, 'result.cannot', { most: Math.ceil(kit.most_nm) })}</p>
          {kit.mayNotMove && <p className={look.caution}>{say(language, 'result.may-not-move')}</p>}
        </>
      )}
      {assumed.length > 0 && (
        <>
          <h3>{say(language, 'result.assumed')}</h3>
          <dl className={look.assumed}>
            {assumed.map((column) => (
              <div key={column}>
                <dt>{textOf(language, 'name', column)}</dt>
                <dd>{textOf(language, 'unknown', column)}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
    </>
  );
}

export function Ranges({
  valve,
  language,
}: {
  readonly valve: Pick<ValveResult, 'starting_nm' | 'ceiling_nm' | 'turns'>;
  readonly language: Language;
}) {
  const rows: readonly (readonly [WordingKey, ToldRange])[] = [
    ['valve.needs', valve.starting_nm],
    ['valve.ceiling', valve.ceiling_nm],
    ['valve.turns', valve.turns],
  ];
  return (
    <ul className={look.ranges}>
      {rows.map(([key, { low, high, guessed }]) => (
        <li key={key}>
          {say(language, key, { low: rounded(low), high: rounded(high) })}
          {guessed && <small> ({say(language, 'valve.guessed')})</small>}
        </li>
      ))}
    </ul>
  );
}

/** No more digits than an estimate has. */
function rounded(value: number): string {
  if (value >= 100) return String(Math.round(value / 10) * 10);
  return value >= 10 ? String(Math.round(value)) : String(Math.round(value * 10) / 10);
}
