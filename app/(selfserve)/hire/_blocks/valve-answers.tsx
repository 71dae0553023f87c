import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderAnswer } from '#lib/services/self-service/order-answer.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import type { ToldRange, ValveResult } from '#lib/services/self-service/valve-answer.ts';
import { durationIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say, type WordingKey } from '#lib/wording/wording.ts';
import pictureLook from './picture.module.css';
import { pieceName } from './piece-name.tsx';
import { Picture, textOf } from './question-form.tsx';
import sheetLook from './sheet.module.css';
import toldLook from './told.module.css';

interface AnswersProps {
  readonly order: OrderView;
  readonly answer: OrderAnswer;
  readonly token: string;
  readonly language: Language;
  /** The first valve that is shown of a long list. */
  readonly from: number;
}

/** Valves whose drawing is shown open; of a long list each opens by itself. */
const OPEN_UP_TO = 2;
/** A drawing a valve: more at once are slow on a slow telephone. */
const VALVES_A_PAGE = 25;

/** What is moved under the finger must be reached and moved by keyboard too. */
const SCROLLS = { tabIndex: 0 } as const;

export function ValveAnswers({ order, answer, token, language, from }: AnswersProps) {
  const { valves } = answer;
  const first = from < valves.length ? from : 0;
  return (
    <section className={sheetLook.sheet} aria-labelledby="valves-answered">
      <h2 id="valves-answered">{say(language, 'order.valves')}</h2>
      {valves.slice(first, first + VALVES_A_PAGE).map((valve) => (
        <details
          key={valve.lineId}
          className={toldLook.valve}
          open={order.stage !== 'accepted' && valves.length <= OPEN_UP_TO}
        >
          <summary>
            <strong>{valve.tag}</strong>
            <span className={valve.handOver.length === 0 ? toldLook.firm : toldLook.open}>
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
      {valves.length > VALVES_A_PAGE && (
        <nav className={sheetLook.row} aria-label={say(language, 'order.valves')}>
          {valves.flatMap(({ lineId }, index) =>
            index % VALVES_A_PAGE > 0
              ? []
              : [
                  <a
                    key={lineId}
                    className="button"
                    href={`${hirePaths.order(token)}?from=${index}#valves-answered`}
                    aria-current={index === first ? 'true' : undefined}
                  >
                    {index + 1}–{Math.min(valves.length, index + VALVES_A_PAGE)}
                  </a>,
                ],
          )}
        </nav>
      )}
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
            className={pictureLook.scroll}
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
          {kit.mayNotMove && <p className={sheetLook.caution}>{say(language, 'result.may-not-move')}</p>}
        </>
      )}
      {assumed.length > 0 && (
        <details>
          <summary>
            {say(language, 'result.assumed')} ({assumed.length})
          </summary>
          <dl className={toldLook.assumed}>
            {assumed.map((column) => (
              <div key={column}>
                <dt>{textOf(language, 'name', column)}</dt>
                <dd>{textOf(language, 'unknown', column)}</dd>
              </div>
            ))}
          </dl>
        </details>
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
    <ul className={toldLook.ranges}>
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
function rounded(value: number): number {
  if (value >= 100) return Math.round(value / 10) * 10;
  return value >= 10 ? Math.round(value) : Math.round(value * 10) / 10;
}
