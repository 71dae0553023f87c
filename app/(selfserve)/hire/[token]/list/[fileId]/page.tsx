import type { Metadata } from 'next';
import { hirePaths } from '#app/_lib/hire-paths.ts';
import { idOf } from '#app/_lib/respond.ts';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { listColumnChoices } from '#lib/services/schedule/list-column-choices.ts';
import { type ListColumn, type ListColumnsView, openListColumns } from '#lib/services/self-service/list-columns.ts';
import type { Language } from '#lib/wording/language.ts';
import { tellerFor } from '#lib/wording/told-in.ts';
import { keyOf, say } from '#lib/wording/wording.ts';
import columns from '../../../_blocks/columns.module.css';
import formLook from '../../../_blocks/form.module.css';
import frameLook from '../../../_blocks/frame.module.css';
import { NoPage, Refused, type SearchParams, textIn } from '../../../_blocks/frame-blocks.tsx';
import { fieldsOf } from '../../../_blocks/list-fields-text.ts';
import sheetLook from '../../../_blocks/sheet.module.css';
import toldLook from '../../../_blocks/told.module.css';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await strangerAsks()).language, 'columns.title') };
}

interface ListProps {
  readonly params: Promise<{ readonly token: string; readonly fileId: string }>;
  readonly searchParams: SearchParams;
}

/** What each column of a list was taken for, to be changed before anything is made of it. */
export default async function ListPage({ params, searchParams }: ListProps) {
  const { context, address, language } = await strangerAsks();
  const { token, fileId: id } = await params;
  const search = await searchParams;
  const fileId = idOf(id);
  const chosen = typeof search.as === 'string' ? search.as : '';
  const table = textIn(search.table) ?? '';
  const found = await openListColumns(context, { token, address, fileId, table, fields: fieldsOf(chosen) });
  if (!found.ok) return <NoPage reason={found.reason} language={language} />;
  const view = found.value;
  return (
    <>
      <p>
        <a href={hirePaths.order(token)}>{say(language, 'answer.back')}</a>
      </p>
      <h1>{say(language, 'columns.title')}</h1>
      <p className={frameLook.lead}>{say(language, 'columns.lead')}</p>
      <Refused code={textIn(search.refused)} wait={textIn(search.wait)} language={language} />
      <Sheets view={view} token={token} fileId={fileId} language={language} />
      <form method="post" action={hirePaths.deed(token, 'list-columns')} className={sheetLook.sheet}>
        <input type="hidden" name="list" value={fileId} />
        <input type="hidden" name="table" value={view.table} />
        <p className="soft">{view.fileName}</p>
        {view.columns.map((column) => (
          <Column key={column.index} column={column} language={language} />
        ))}
        <p role="status" className={view.lines === 0 ? sheetLook.notFree : sheetLook.done}>
          {say(language, view.lines === 1 ? 'columns.lines-one' : 'columns.lines', { count: view.lines })}
        </p>
        <div className={columns.pairEqual}>
          <button type="submit" name="then" value="look" className="button">
            {say(language, 'columns.look')}
          </button>
          <button type="submit" name="then" value="take" className="button main" disabled={view.lines === 0}>
            {say(language, 'columns.take')}
          </button>
        </div>
      </form>
      <Problems view={view} language={language} />
    </>
  );
}

interface SheetsProps {
  readonly view: ListColumnsView;
  readonly token: string;
  readonly fileId: number;
  readonly language: Language;
}

/** Where a workbook has several sheets. */
function Sheets({ view, token, fileId, language }: SheetsProps) {
  if (view.tables.length < 2) return null;
  return (
    <nav aria-label={say(language, 'columns.sheet')} className={sheetLook.row}>
      {view.tables.map((name) => (
        <a
          key={name}
          className="button"
          href={`${hirePaths.list(token, fileId)}?${new URLSearchParams({ table: name })}`}
          aria-current={name === view.table ? 'true' : undefined}
        >
          {name}
        </a>
      ))}
    </nav>
  );
}

function Column({ column, language }: { readonly column: ListColumn; readonly language: Language }) {
  const { tell } = tellerFor({ language });
  const { index, header, field, values, isUnderstood } = column;
  const id = `column-${index}`;
  const name = header === '' ? say(language, 'columns.no-name', { number: index + 1 }) : header;
  return (
    <div className={isUnderstood ? formLook.field : `${formLook.field} ${sheetLook.notFree}`}>
      <label htmlFor={id}>{name}</label>
      <small>{values.join(' · ')}</small>
      <select id={id} name={id} defaultValue={field}>
        {listColumnChoices().map((choice) => (
          <option key={choice.name} value={choice.name}>
            {columnWords(language, { name: choice.name, label: tell(choice.label) })}
          </option>
        ))}
      </select>
      {!isUnderstood && <small>{say(language, 'columns.guessed')}</small>}
    </div>
  );
}

function columnWords(language: Language, { name, label }: { readonly name: string; readonly label: string }): string {
  const key = keyOf('columns', name) ?? keyOf('name', name);
  return key === undefined ? label : say(language, key);
}

function Problems({ view, language }: Pick<SheetsProps, 'view' | 'language'>) {
  const { told } = tellerFor({ language });
  if (view.problems.length === 0) return null;
  return (
    <section className={sheetLook.sheet} aria-labelledby="problems">
      <h2 id="problems">{say(language, 'columns.problems')}</h2>
      <ul className={toldLook.reasons}>
        {view.problems.map(({ row, column, sentence, isRefused }) => {
          const { text, language: spoken } = told(sentence);
          const place =
            column === '' ? say(language, 'columns.row', { row }) : say(language, 'columns.cell', { row, column });
          return (
            <li key={`${row} ${column} ${sentence}`}>
              <strong>{place}</strong> {isRefused && say(language, 'columns.not-taken')}{' '}
              <span lang={spoken}>{text}</span>
            </li>
          );
        })}
      </ul>
      {view.moreProblems > 0 && <p>{say(language, 'columns.more', { count: view.moreProblems })}</p>}
    </section>
  );
}
