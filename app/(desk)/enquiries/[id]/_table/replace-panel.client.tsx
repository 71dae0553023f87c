'use client';

import { type FormEvent, useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { BulkEdit, ReplacePreview } from '#lib/services/schedule/bulk-edit.ts';
import styles from './schedule-table.module.css';
import { linesMeant, type PanelProps } from './tools-props.ts';

type Scope = 'all' | 'shown' | 'meant';
type ReplaceEdit = Extract<BulkEdit, { readonly kind: 'replace' }>;

const EMPTY: ReplaceEdit = { kind: 'replace', find: '', put: '', columns: [], match: 'part', letters: 'any' };

/** Finds a text in all lines, loaded or not, says how many cells it would change, and changes one or all of them. */
export function ReplacePanel(props: PanelProps) {
  const { schedule } = props;
  const [edit, setEdit] = useState(EMPTY);
  const [scope, setScope] = useState<Scope>('all');
  const [at, setAt] = useState(0);
  const lineIds = scope === 'all' ? undefined : scope === 'shown' ? schedule.lines.order : linesMeant(props);
  const preview = usePreview({ props, edit, lineIds });
  const next = preview?.first[at % Math.max(1, preview.first.length)];

  function show(step: number): void {
    if (!preview || preview.first.length === 0) return;
    const to = (at + step + preview.first.length) % preview.first.length;
    setAt(to);
    goTo(to);
  }

  function goTo(index: number): void {
    const found = preview?.first[index];
    const row = found && schedule.lines.placeOf(found.lineId);
    if (row === undefined) schedule.tell('That cell is in a line that the filter hides.');
    else props.walk.current.go({ row, column: Math.max(0, columnOf(props, found?.column ?? '')) });
  }

  function replaceOne(): void {
    if (!next) return;
    schedule.write([{ lineId: next.lineId, column: next.column, text: next.after, was: next.before }]);
  }

  function onSubmit(event: FormEvent): void {
    event.preventDefault();
    schedule.bulk(lineIds, edit);
  }

  return (
    <form onSubmit={onSubmit}>
      <Asked {...{ props, edit, scope }} onEdit={setEdit} onScope={setScope} />
      <p role="status" className={styles.found}>
        {told(edit, preview)}
        {next && (
          <>
            {' '}
            <small>
              {(at % Math.max(1, preview?.first.length ?? 1)) + 1}: “{next.before}” → “{next.after}”
            </small>
          </>
        )}
      </p>
      <div className="tools">
        <button type="button" disabled={!next} onClick={() => show(0)}>
          Go to it
        </button>
        <button type="button" disabled={!next} onClick={() => show(1)}>
          Next
        </button>
        <button type="button" disabled={!next} onClick={replaceOne}>
          Replace this one
        </button>
        <button type="submit" className="main" disabled={!next}>
          {preview && preview.cells > 1 ? `Replace all ${preview.cells}` : 'Replace all'}
        </button>
      </div>
    </form>
  );
}

function columnOf({ columns }: PanelProps, name: string): number {
  return columns.findIndex((column) => column.name === name);
}

function told(edit: ReplaceEdit, preview: ReplacePreview | undefined): string {
  if (edit.find === '') return 'Type what is to be found.';
  if (!preview) return 'Looking…';
  if (preview.cells === 0) return 'Found nowhere.';
  return `Found in ${preview.cells} ${preview.cells === 1 ? 'cell' : 'cells'} of ${preview.lines} ${preview.lines === 1 ? 'line' : 'lines'}.`;
}

interface PreviewOf {
  readonly props: PanelProps;
  readonly edit: ReplaceEdit;
  readonly lineIds: readonly number[] | undefined;
}

const TYPING_MS = 200;

function usePreview({ props, edit, lineIds }: PreviewOf): ReplacePreview | undefined {
  const [preview, setPreview] = useState<ReplacePreview>();
  const { saving, enquiryId } = props.schedule;
  const done = `${saving.past.length} ${saving.future.length} ${saving.jobs.length}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when the question or the schedule changes.
  useEffect(() => {
    if (edit.find === '') {
      setPreview(undefined);
      return undefined;
    }
    let isLatest = true;
    const timer = setTimeout(() => {
      const path = `/api/v1/enquiries/${enquiryId}/lines/bulk/preview`;
      void send<ReplacePreview>({ method: 'POST', path, body: { lineIds, edit } }).then((sent) => {
        if (isLatest) setPreview(sent.ok ? sent.value : { cells: 0, lines: 0, first: [] });
      });
    }, TYPING_MS);
    return () => {
      isLatest = false;
      clearTimeout(timer);
    };
  }, [edit, lineIds?.length, done, enquiryId]);
  return preview;
}

interface AskedProps {
  readonly props: PanelProps;
  readonly edit: ReplaceEdit;
  readonly scope: Scope;
  readonly onEdit: (edit: ReplaceEdit) => void;
  readonly onScope: (scope: Scope) => void;
}

function Asked({ props, edit, scope, onEdit, onScope }: AskedProps) {
  return (
    <div className="tools">
      <div>
        <label htmlFor="replace-find">Find</label>
        <input
          id="replace-find"
          value={edit.find}
          onChange={(event) => onEdit({ ...edit, find: event.target.value })}
        />
      </div>
      <div>
        <label htmlFor="replace-put">Put in its place</label>
        <input id="replace-put" value={edit.put} onChange={(event) => onEdit({ ...edit, put: event.target.value })} />
      </div>
      <div>
        <label htmlFor="replace-column">In the column</label>
        <select
          id="replace-column"
          value={edit.columns[0] ?? ''}
          onChange={({ target }) => onEdit({ ...edit, columns: target.value === '' ? [] : [target.value] })}
        >
          <option value="">any</option>
          {props.choices.map(({ name, label }) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="replace-match">It is</label>
        <select
          id="replace-match"
          value={edit.match}
          onChange={({ target }) => onEdit({ ...edit, match: target.value === 'whole' ? 'whole' : 'part' })}
        >
          <option value="part">part of a cell</option>
          <option value="whole">the whole cell</option>
        </select>
      </div>
      <div>
        <label htmlFor="replace-scope">Among</label>
        <select id="replace-scope" value={scope} onChange={({ target }) => onScope(scopeOf(target.value))}>
          <option value="all">all {props.schedule.lines.state.lines} lines</option>
          <option value="shown">the {props.schedule.lines.order.length} lines shown</option>
          <option value="meant">{props.chosen.size > 0 ? 'the lines chosen' : 'the lines of the block'}</option>
        </select>
      </div>
      <label className={styles.check}>
        <input
          type="checkbox"
          checked={edit.letters === 'exact'}
          onChange={({ target }) => onEdit({ ...edit, letters: target.checked ? 'exact' : 'any' })}
        />{' '}
        capitals count
      </label>
    </div>
  );
}

function scopeOf(text: string): Scope {
  return text === 'shown' || text === 'meant' ? text : 'all';
}
