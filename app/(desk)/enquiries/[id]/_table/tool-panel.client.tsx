'use client';

import { type FormEvent, useEffect, useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { ChangeView } from '#lib/services/schedule/read-changes.ts';
import { gridColumns, USUAL } from './grid-columns.ts';
import { ReplacePanel } from './replace-panel.client.tsx';
import styles from './schedule-table.module.css';
import { SetPanel } from './set-panel.client.tsx';
import type { Panel, PanelProps } from './tools-props.ts';

const TITLES: Readonly<Record<Panel, string>> = {
  replace: 'Find and replace',
  set: 'Write a column',
  columns: 'Columns shown',
  go: 'Go to a line',
  changes: 'Changes of this schedule',
};

/** One tool at a time, between the buttons and the lines; Escape puts it away. */
export function ToolPanel(props: PanelProps & { readonly panel: Panel }) {
  const { panel, onPanel } = props;
  const box = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a tool that was just opened takes the focus.
  useEffect(() => box.current?.querySelector<HTMLElement>('input, select, button:not([data-close])')?.focus(), [panel]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape from anything inside puts the tool away.
    <div
      ref={box}
      className={`panel ${styles.panel}`}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onPanel(undefined);
      }}
    >
      <div className={styles.panelHead}>
        <h2>{TITLES[panel]}</h2>
        <button type="button" data-close onClick={() => onPanel(undefined)}>
          Close
        </button>
      </div>
      {panel === 'replace' && <ReplacePanel {...props} />}
      {panel === 'set' && <SetPanel {...props} />}
      {panel === 'columns' && <ColumnsPanel {...props} />}
      {panel === 'go' && <GoPanel {...props} />}
      {panel === 'changes' && <ChangesPanel {...props} />}
    </div>
  );
}

/** Which columns stand beside the duty; the tag always does. */
function ColumnsPanel({ choices, shown, schedule }: PanelProps) {
  const [filled, setFilled] = useState<ReadonlySet<string>>();

  async function showFilled(): Promise<void> {
    const cells = await schedule.lines.cells(schedule.lines.order);
    const names = new Set([...cells.values()].flatMap((line) => Object.keys(line.cells)));
    setFilled(names);
    shown.show(choices.map(({ name }) => name).filter((name) => USUAL.includes(name) || names.has(name)));
  }

  function toggle(name: string): void {
    const next = shown.names.includes(name) ? shown.names.filter((one) => one !== name) : [...shown.names, name];
    shown.show(choices.map((choice) => choice.name).filter((one) => next.includes(one)));
  }

  return (
    <>
      <div className="tools">
        <button type="button" onClick={() => void showFilled()}>
          All that hold something
        </button>
        <button type="button" onClick={() => shown.show(USUAL)}>
          Only the usual ones
        </button>
        {filled && <small role="status">{filled.size} columns hold something.</small>}
      </div>
      <div className={styles.columnChoices}>
        {choices.map(({ name, label }) => (
          <label key={name} className={styles.check}>
            <input
              type="checkbox"
              checked={shown.names.includes(name)}
              disabled={name === 'tag'}
              onChange={() => toggle(name)}
            />{' '}
            {label}
          </label>
        ))}
      </div>
    </>
  );
}

/** By the number of the row in this table, or by tag. */
function GoPanel({ schedule, walk, onPanel }: PanelProps) {
  const [text, setText] = useState('');
  const [trouble, setTrouble] = useState('');

  async function onSubmit(event: FormEvent): Promise<void> {
    event.preventDefault();
    const { order } = schedule.lines;
    const wanted = text.trim().toLowerCase();
    const cells = await schedule.lines.cells(order);
    const exact = order.findIndex((id) => (cells.get(id)?.cells.tag ?? '').toLowerCase() === wanted);
    const begun = order.findIndex((id) => (cells.get(id)?.cells.tag ?? '').toLowerCase().startsWith(wanted));
    const row = exact >= 0 ? exact : /^\d+$/.test(wanted) ? Number(wanted) - 1 : begun;
    if (row < 0 || row >= order.length || wanted === '') {
      setTrouble(`No line shown is called “${text}”, and there are ${order.length} lines.`);
      return;
    }
    onPanel(undefined);
    walk.current.go({ row, column: 0 });
  }

  return (
    <form className="tools" onSubmit={(event) => void onSubmit(event)}>
      <div>
        <label htmlFor="go-to">Tag, or place in the list</label>
        <input id="go-to" value={text} onChange={(event) => setText(event.target.value)} />
      </div>
      <button type="submit">Go there</button>
      {trouble !== '' && <p role="alert">{trouble}</p>}
    </form>
  );
}

/** Who changed what, the newest first; any change can be taken back, by anybody, as a change of its own. */
function ChangesPanel({ schedule, choices }: PanelProps) {
  const [changes, setChanges] = useState<readonly ChangeView[]>();
  const path = `/api/v1/enquiries/${schedule.enquiryId}/changes`;
  const done = schedule.saving.past.length + schedule.saving.future.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again after every change that is made here.
  useEffect(() => {
    void send<readonly ChangeView[]>({ method: 'GET', path }).then((sent) => setChanges(sent.ok ? sent.value : []));
  }, [path, done]);
  if (!changes) return <p className="soft">Reading…</p>;
  if (changes.length === 0) return <p className="soft">Nothing was changed yet.</p>;
  const labels = new Map(
    gridColumns(
      choices,
      choices.map(({ name }) => name),
    ).map(({ name, label }) => [name, label]),
  );
  return (
    <div className={styles.changes}>
      <table>
        <thead>
          <tr>
            <th>When</th>
            <th>Who</th>
            <th>What</th>
            <th>
              <span className={styles.unseen}>Take back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {changes.map(({ id, at, who, kind, told, cells }) => (
            <tr key={id}>
              <td>
                <ShownMoment at={at} />
              </td>
              <td>{who}</td>
              <td>
                {kind === 'undone' && 'taken back: '}
                {kind === 'list' && 'list taken: '}
                {told}
                {cells.length > 0 && <small> {columnsTold(cells, labels)}</small>}
              </td>
              <td>
                {kind !== 'enquiry' && (
                  <button type="button" onClick={() => schedule.take({ kind: 'undo', changes: [id], way: 'any' })}>
                    Take back
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function columnsTold(cells: ChangeView['cells'], labels: ReadonlyMap<string, string>): string {
  return [...new Set(cells.map(({ column }) => labels.get(column) ?? column))].slice(0, 4).join(', ');
}
