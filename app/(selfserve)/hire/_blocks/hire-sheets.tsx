import { hirePaths } from '#app/_lib/hire-paths.ts';
import type { HiredPieceView, OrderHire } from '#lib/services/self-service/order-hire.ts';
import type { OrderBooking } from '#lib/services/self-service/order-quotes.ts';
import { amountIn, dayIn, hourOf } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import { pieceName } from './piece-name.tsx';
import sheetLook from './sheet.module.css';
import line from './steps.module.css';
import toldLook from './told.module.css';

interface HireProps {
  readonly booking: OrderBooking;
  readonly token: string;
  readonly language: Language;
}

/** What left, what came back, what is missing, and what is charged for it. */
export function HireSheets({ booking, token, language }: HireProps) {
  const { hire } = booking;
  return (
    <>
      <Delivered hire={hire} language={language} />
      <CameBack hire={hire} language={language} />
      <Charges booking={booking} token={token} language={language} />
    </>
  );
}

interface Shown {
  readonly hire: OrderHire;
  readonly language: Language;
}

function Delivered({ hire, language }: Shown) {
  if (hire.deliveries.length === 0) return null;
  return (
    <details className={sheetLook.sheet} open={hire.returns.length === 0}>
      <summary className={sheetLook.summary}>{say(language, 'out.title')}</summary>
      {hire.deliveries.map(({ leftAt, pieces }) => (
        <div key={leftAt}>
          <p>{say(language, 'out.left', { date: dayIn(language, leftAt), hour: hourOf(leftAt) })}</p>
          <ul className={toldLook.pieces}>
            {pieces.map((piece) => (
              <li key={`${piece.model} ${piece.serial}`}>
                <PieceWords piece={piece} language={language} />
              </li>
            ))}
          </ul>
        </div>
      ))}
    </details>
  );
}

function CameBack({ hire, language }: Shown) {
  if (hire.returns.length === 0) return null;
  return (
    <section className={sheetLook.sheet} aria-labelledby="back">
      <h2 id="back">{say(language, 'back.title')}</h2>
      {hire.returns.map(({ arrivedOn, pieces }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two returns may arrive on one day
        <div key={index}>
          <p>{say(language, 'back.came', { date: dayIn(language, arrivedOn) })}</p>
          <ul className={toldLook.pieces}>
            {pieces.map((piece) => (
              <li key={`${piece.model} ${piece.serial}`}>
                <PieceWords piece={piece} language={language} />
                <small>{conditionWords(language, piece)}</small>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {hire.missing.length > 0 && (
        <div>
          <h3>{say(language, 'back.missing')}</h3>
          <ul className={toldLook.reasons}>
            {hire.missing.map((piece) => (
              <li key={`${piece.model} ${piece.serial}`}>
                <PieceWords piece={piece} language={language} />
                {piece.lost === 'lost' && <small> {say(language, 'back.lost')}</small>}
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

interface PieceProps {
  readonly piece: HiredPieceView;
  readonly language: Language;
}

/** A piece by its name and number; the number is never broken at its hyphen. */
export function PieceWords({ piece, language }: PieceProps) {
  const { serial, count } = piece;
  const name = pieceName(piece, language);
  if (serial === '') return count === 1 ? name : `${count} × ${name}`;
  const words = say(language, 'piece.serial', { name, serial });
  const at = words.lastIndexOf(serial);
  return (
    <>
      {words.slice(0, at)}
      <span className={line.number}>{serial}</span>
      {words.slice(at + serial.length)}
    </>
  );
}

function conditionWords(language: Language, piece: OrderHire['returns'][number]['pieces'][number]): string {
  const key = keyOf('back', piece.condition);
  const parts = piece.missingParts === '' ? [] : [say(language, 'back.parts', { parts: piece.missingParts })];
  const told = [...(key === undefined ? [] : [say(language, key)]), ...parts];
  return told.length === 0 ? '' : ` ${told.join('; ')}`;
}

/** Only as the house issued them: what nobody has decided yet is nobody's charge. */
function Charges({ booking, token, language }: HireProps) {
  const { notes } = booking.hire;
  if (notes.length === 0) return null;
  return (
    <section className={sheetLook.sheet} aria-labelledby="charges">
      <h2 id="charges">{say(language, 'note.title')}</h2>
      {notes.map((note) => {
        const amount = (amount_minor: number) => amountIn(language, { amount_minor, currency: note.currency });
        return (
          <div key={note.number}>
            <h3>{say(language, 'note.of', { number: note.number, date: dayIn(language, note.issuedOn) })}</h3>
            {note.lines.length === 0 && <p>{say(language, 'note.none')}</p>}
            {note.lines.length > 0 && (
              <table className={toldLook.price}>
                <tbody>
                  {note.lines.map(({ label, net_minor }) => (
                    <tr key={label}>
                      <th scope="row" lang="en">
                        {label}
                      </th>
                      <td>{amount(net_minor)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
            <p>
              <strong>
                {say(language, 'note.total', { amount: amount(note.gross_minor), currency: note.currency })}
              </strong>
            </p>
            <a className="button" href={hirePaths.paper(token, note.number)}>
              {say(language, 'note.pdf')}
            </a>
          </div>
        );
      })}
    </section>
  );
}
