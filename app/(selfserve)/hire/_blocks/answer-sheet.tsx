import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { OrderAnswer } from '#lib/services/self-service/order-answer.ts';
import type { OrderView } from '#lib/services/self-service/order-view.ts';
import { amountIn, dayIn, durationIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { reasonWords } from '#lib/wording/reason-words.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import { PieceName } from './piece-name.tsx';
import sheetLook from './sheet.module.css';
import toldLook from './told.module.css';
import { ValveAnswers } from './valve-answers.tsx';

interface AnswerProps {
  readonly order: OrderView;
  readonly answer: OrderAnswer;
  readonly token: string;
  readonly language: Language;
  /** The first valve that is shown of a long list. */
  readonly from: number;
}

/** What fits, what it costs, when it is free, what was assumed, and other ways. */
export function AnswerSheet(props: AnswerProps) {
  const { answer, language, order } = props;
  if (order.stage === 'accepted') return <Ordered {...props} />;
  return (
    <>
      <section className={sheetLook.sheet} aria-labelledby="answer">
        <h2 id="answer" className={answer.firm ? toldLook.firm : toldLook.open}>
          {say(language, answer.firm ? 'result.firm' : 'result.not-firm')}
        </h2>
        <Reasons {...props} />
        <Free {...props} />
        <Price {...props} />
        <Kits {...props} />
        <Ways {...props} />
      </section>
      <ValveAnswers {...props} />
      <Cautions language={language} />
    </>
  );
}

/** Once it is ordered, what comes and how each valve is turned; price and dates stand in the quote and the booking. */
function Ordered(props: AnswerProps) {
  return (
    <>
      <details className={sheetLook.sheet}>
        <summary className={sheetLook.summary}>{say(props.language, 'result.kit')}</summary>
        <Kits {...props} />
      </details>
      <ValveAnswers {...props} />
      <Cautions language={props.language} />
    </>
  );
}

/** Of a long list the others stand with their valves. */
const REASONS_SHOWN = 20;

function Reasons({ answer, language }: AnswerProps) {
  const told = [
    ...answer.handOver.map((reason) => ({ tag: '', reason })),
    ...answer.valves.flatMap(({ tag, handOver }) => handOver.map((reason) => ({ tag, reason }))),
  ];
  if (told.length === 0) return null;
  return (
    <>
      <h3>{say(language, 'result.reasons')}</h3>
      <ul className={toldLook.reasons}>
        {told.slice(0, REASONS_SHOWN).map(({ tag, reason }) => (
          <li key={`${tag} ${reason.code}`}>
            {tag !== '' && <strong>{tag}: </strong>}
            {reasonWords(language, reason)}
          </li>
        ))}
      </ul>
      {told.length > REASONS_SHOWN && <p>{say(language, 'columns.more', { count: told.length - REASONS_SHOWN })}</p>}
    </>
  );
}

function Free({ answer, order, token, language }: AnswerProps) {
  const { availability } = answer;
  if (availability.kind === 'free') return <p className={toldLook.free}>{say(language, 'result.free')}</p>;
  if (availability.kind !== 'later')
    return (
      <p className={sheetLook.notFree}>
        {say(language, availability.kind === 'more days' ? 'result.more-days' : 'result.not-free')}
      </p>
    );
  const date = dayIn(language, availability.from);
  const { name = '', days, zone = '', vehicleAccess, enclosed } = order.site;
  return (
    <form method="post" action={hirePaths.deed(token, 'place')} className={sheetLook.notFree}>
      <p>{say(language, 'result.later', { date })}</p>
      <input type="hidden" name="starts_on" value={availability.from} />
      <input type="hidden" name="days" value={days} />
      <input type="hidden" name="name" value={name} />
      <input type="hidden" name="zone" value={zone} />
      <input type="hidden" name="vehicle_access" value={yesNo(vehicleAccess)} />
      <input type="hidden" name="enclosed" value={yesNo(enclosed)} />
      {order.mayChange && (
        <button type="submit" className="button">
          {say(language, 'result.take-date', { date })}
        </button>
      )}
    </form>
  );
}

function yesNo(value: boolean | undefined): string {
  return value === undefined ? '' : value ? 'yes' : 'no';
}

const PRICED: Readonly<Record<string, 'hire' | 'waiver' | 'delivery' | 'collection' | 'labour'>> = {
  hire: 'hire',
  waiver: 'waiver',
  delivery: 'delivery',
  collection: 'collection',
  labour: 'labour',
};

function pricedAs(kind: string): 'hire' | 'waiver' | 'delivery' | 'collection' | 'labour' | 'other' {
  return PRICED[kind] ?? 'other';
}

function Price({ answer, language }: AnswerProps) {
  const { price } = answer;
  const amount = (amount_minor: number): string => amountIn(language, { amount_minor, currency: price.currency });
  const kinds = [...new Set(price.lines.map(({ kind }) => pricedAs(kind)))];
  const sums = kinds.map((kind) => ({
    kind,
    sum: price.lines.filter((line) => pricedAs(line.kind) === kind).reduce((all, line) => all + line.net_minor, 0),
  }));
  return (
    <>
      <p className={toldLook.total}>
        {amount(price.gross_minor)} {price.currency}
      </p>
      <table className={toldLook.price}>
        <caption>{say(language, 'result.price')}</caption>
        <tbody>
          {sums.map(({ kind, sum }) => (
            <tr key={kind}>
              <th scope="row">{say(language, `price.${kind}`)}</th>
              <td>{amount(sum)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">{say(language, 'price.tax')}</th>
            <td>{amount(price.tax_minor)}</td>
          </tr>
          <tr className={toldLook.sum}>
            <th scope="row">{say(language, 'price.gross')}</th>
            <td>{amount(price.gross_minor)}</td>
          </tr>
          {price.deposit_minor > 0 && (
            <tr>
              <th scope="row">{say(language, 'price.deposit')}</th>
              <td>{amount(price.deposit_minor)}</td>
            </tr>
          )}
        </tbody>
      </table>
    </>
  );
}

function Kits({ answer, order, language }: AnswerProps) {
  if (answer.kits.length === 0) return null;
  return (
    <>
      {order.stage !== 'accepted' && <h3>{say(language, 'result.kit')}</h3>}
      {answer.kits.map((kit, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: kits have no name but their place
        <div key={index}>
          <p className="soft">{say(language, 'result.crew', { number: index + 1, mass: Math.round(kit.mass_kg) })}</p>
          <ul className={toldLook.pieces}>
            {kit.pieces.map((piece) => (
              <li key={piece.name}>
                {piece.count > 1 && `${piece.count} × `}
                <PieceName piece={piece} language={language} />
              </li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

function Ways({ answer, order, token, language }: AnswerProps) {
  if (answer.ways.length < 2) return null;
  return (
    <details className={toldLook.ways}>
      <summary>{say(language, 'result.ways')}</summary>
      {answer.ways.map((way) => (
        <form key={way.preference} method="post" action={hirePaths.deed(token, 'way')}>
          <h4>{say(language, keyOf('result', `way-${way.preference}`) ?? 'result.ways')}</h4>
          <p>
            {say(language, 'result.way-figures', {
              amount: amountIn(language, { amount_minor: way.gross_minor, currency: answer.price.currency }),
              currency: answer.price.currency,
              pieces: way.pieces,
              mass: Math.round(way.mass_kg),
              hours: durationIn(way.hours * 3600),
            })}
          </p>
          {way.preference === answer.chosen ? (
            <p className="soft">{say(language, 'result.way-chosen')}</p>
          ) : (
            order.mayChange && (
              <button type="submit" name="way" value={way.preference} className="button">
                {say(language, 'result.way-take')}
              </button>
            )
          )}
        </form>
      ))}
    </details>
  );
}

function Cautions({ language }: { readonly language: Language }) {
  return (
    <section className={sheetLook.cautions} aria-labelledby="cautions">
      <h2 id="cautions">{say(language, 'result.cautions')}</h2>
      <ul>
        {(['result.caution-1', 'result.caution-2', 'result.caution-3', 'result.caution-4'] as const).map((key) => (
          <li key={key}>{say(language, key)}</li>
        ))}
      </ul>
    </section>
  );
}
