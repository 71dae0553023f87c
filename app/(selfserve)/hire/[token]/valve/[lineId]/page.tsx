import type { Metadata } from 'next';
import { hirePaths } from '#app/_lib/hire-paths.ts';
import { idOf } from '#app/_lib/respond.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { askValve, type ValveAsking } from '#lib/services/self-service/ask-valve.ts';
import type { Language } from '#lib/wording/language.ts';
import { choiceWords } from '#lib/wording/reason-words.ts';
import { say } from '#lib/wording/wording.ts';
import { DeviceScript } from '../../../_blocks/device-blocks.tsx';
import formLook from '../../../_blocks/form.module.css';
import { NoPage, Refused, type SearchParams, textIn } from '../../../_blocks/frame-blocks.tsx';
import { QuestionForm, textOf } from '../../../_blocks/question-form.tsx';
import { questionPicture } from '../../../_blocks/question-picture.ts';
import sheetLook from '../../../_blocks/sheet.module.css';
import { SoFar } from '../../../_blocks/so-far.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await strangerAsks()).language, 'frame.name') };
}

interface ValveProps {
  readonly params: Promise<{ readonly token: string; readonly lineId: string }>;
  readonly searchParams: SearchParams;
}

export default async function ValvePage({ params, searchParams }: ValveProps) {
  const { context, address, language } = await strangerAsks();
  const { token, lineId } = await params;
  const found = await askValve(context, { token, address, lineId: idOf(lineId) });
  if (!found.ok) return <NoPage reason={found.reason} language={language} />;
  const valve = found.value;
  const { questions, findOut } = valve;
  const [next] = questions;
  return (
    <>
      <p>
        <a href={hirePaths.order(token)}>{say(language, 'answer.back')}</a>
      </p>
      <h1>{say(language, 'valve.title', { tag: valve.cells.tag ?? '' })}</h1>
      <Refused code={textIn((await searchParams).refused)} language={language} />
      <SoFar outcome={valve.outcome} language={language} />
      {next === undefined ? (
        <p>{say(language, 'valve.none-left')}</p>
      ) : (
        <>
          <p className="soft">{leftWords(language, questions.length)}</p>
          <QuestionForm
            question={{ ...next, picture: questionPicture(next.column, language) }}
            language={language}
            action={hirePaths.deed(token, 'answer')}
            lineId={valve.lineId}
          />
        </>
      )}
      {next === undefined && findOut !== null && (
        <p className={sheetLook.caution}>
          {say(language, 'valve.find-out', {
            name: textOf(language, 'name', findOut.column),
            how: textOf(language, 'how', findOut.column),
          })}
        </p>
      )}
      <p>
        <a className={`button ${next === undefined ? 'main' : ''} ${formLook.wide}`} href={hirePaths.order(token)}>
          {say(language, 'valve.enough')}
        </a>
      </p>
      <PhotoForm token={token} valve={valve} language={language} />
      <Answered token={token} valve={valve} language={language} />
      <DeviceScript />
    </>
  );
}

function leftWords(language: Language, count: number): string {
  return count === 1 ? say(language, 'valve.left-one') : say(language, 'valve.left', { count });
}

interface PartProps {
  readonly token: string;
  readonly valve: ValveAsking;
  readonly language: Language;
}

function PhotoForm({ token, valve, language }: PartProps) {
  return (
    <form
      method="post"
      action={hirePaths.deed(token, 'photo')}
      encType="multipart/form-data"
      className={sheetLook.sheet}
      aria-labelledby="photo-title"
    >
      <h2 id="photo-title">{say(language, 'valve.photo')}</h2>
      <p className="soft">{say(language, valve.hasPhoto ? 'valve.photo-there' : 'valve.photo-help')}</p>
      <input type="hidden" name="line" value={valve.lineId} />
      <input
        type="file"
        name="photo"
        accept="image/*"
        capture="environment"
        required
        aria-label={say(language, 'valve.photo')}
      />
      <button type="submit" className="button">
        {say(language, 'valve.photo-send')}
      </button>
    </form>
  );
}

/** What was answered so far; each can be answered anew, and the valve taken out. */
function Answered({ token, valve, language }: PartProps) {
  const answers = Object.entries(valve.cells).filter(([column, text]) => column !== 'tag' && text !== '');
  return (
    <details className={sheetLook.sheet}>
      <summary className={sheetLook.summary}>{say(language, 'valve.change')}</summary>
      <ul className={formLook.answered}>
        {answers.map(([column, text]) => (
          <li key={column}>
            <form method="post" action={hirePaths.deed(token, 'answer')}>
              <input type="hidden" name="line" value={valve.lineId} />
              <input type="hidden" name="column" value={column} />
              <span>
                {textOf(language, 'name', column)}: {choiceWords(language, { column, text: text ?? '' })}
              </span>
              <button type="submit" name="unknown" value="yes" className="button small">
                {say(language, 'answer.unknown')}
              </button>
            </form>
          </li>
        ))}
      </ul>
      <form method="post" action={hirePaths.deed(token, 'remove')}>
        <input type="hidden" name="line" value={valve.lineId} />
        <button type="submit" className="button danger">
          {say(language, 'valve.remove')}
        </button>
      </form>
    </details>
  );
}
