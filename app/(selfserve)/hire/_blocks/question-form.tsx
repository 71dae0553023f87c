import { DrawingShapes } from '#app/_ui/drawing-shapes.tsx';
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import type { Language } from '#lib/wording/language.ts';
import { choiceWords } from '#lib/wording/reason-words.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import formLook from './form.module.css';
import pictureLook from './picture.module.css';
import sheetLook from './sheet.module.css';

export interface QuestionView {
  readonly column: string;
  readonly answered: 'by choice' | 'by number';
  readonly answers: readonly string[];
  readonly picture: Drawing | null;
}

export function textOf(language: Language, part: 'ask' | 'how' | 'unknown' | 'name', column: string): string {
  const key = keyOf(part, column);
  return key === undefined ? column.replaceAll('_', ' ') : say(language, key);
}

/** One question with its drawing; each answer is a button that sends it. */
export function QuestionForm({
  question,
  language,
  action,
  lineId,
}: {
  readonly question: QuestionView;
  readonly language: Language;
  readonly action: string;
  readonly lineId: number;
}) {
  const { column, answers, answered } = question;
  return (
    <form
      method="post"
      action={action}
      data-keep={column}
      className={sheetLook.question}
      aria-labelledby={`ask-${column}`}
    >
      <input type="hidden" name="column" value={column} />
      <input type="hidden" name="line" value={lineId} />
      <h2 id={`ask-${column}`}>{textOf(language, 'ask', column)}</h2>
      <HowTo question={question} language={language} />
      {answered === 'by number' && (
        <div className={formLook.written}>
          <label htmlFor={`write-${column}`}>{textOf(language, 'name', column)}</label>
          <input id={`write-${column}`} name="written" autoComplete="off" placeholder={answers[1] ?? answers[0]} />
          <button type="submit" name="answer" value="" className="button main">
            {say(language, 'answer.save')}
          </button>
        </div>
      )}
      {answered === 'by choice' && (
        <div className={formLook.choices}>
          {answers.map((text) => (
            <button key={text} type="submit" name="answer" value={text} className="button">
              {choiceWords(language, { column, text })}
            </button>
          ))}
        </div>
      )}
      <button type="submit" name="unknown" value="yes" className={`button ${formLook.unknown}`}>
        {say(language, 'answer.unknown')}
      </button>
      <p className="soft">{say(language, 'answer.if-unknown', { text: textOf(language, 'unknown', column) })}</p>
    </form>
  );
}

function HowTo({ question, language }: { readonly question: QuestionView; readonly language: Language }) {
  const { column, picture } = question;
  return (
    <div className={pictureLook.how}>
      <Picture drawing={picture} label={textOf(language, 'how', column)} />
      <p>{textOf(language, 'how', column)}</p>
    </div>
  );
}

export function Picture({ drawing, label }: { readonly drawing: Drawing | null; readonly label: string }) {
  if (drawing === null) return null;
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      className={pictureLook.picture}
    >
      <DrawingShapes shapes={drawing.shapes} />
    </svg>
  );
}
