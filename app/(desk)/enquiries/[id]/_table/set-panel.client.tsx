'use client';

import { type FormEvent, useState } from 'react';
import type { BulkEdit } from '#lib/services/schedule/bulk-edit.ts';
import { linesMeant, type PanelProps } from './tools-props.ts';

type Scope = 'meant' | 'shown';
type What = 'set' | 'measured' | 'unmeasured';

const WHATS: Readonly<Record<What, string>> = {
  set: 'say',
  measured: 'count as measured',
  unmeasured: 'not count as measured',
};

/** One column of many lines: a text, or whether it was measured on the valve. */
export function SetPanel(props: PanelProps) {
  const { schedule, choices, chosen } = props;
  const [column, setColumn] = useState('valve_type');
  const [what, setWhat] = useState<What>('set');
  const [text, setText] = useState('');
  const [scope, setScope] = useState<Scope>(chosen.size > 0 ? 'meant' : 'shown');
  const { order } = schedule.lines;
  const meant = linesMeant(props);

  function onSubmit(event: FormEvent): void {
    event.preventDefault();
    const edit: BulkEdit = what === 'set' ? { kind: 'set', column, text } : { kind: what, column };
    schedule.bulk(scope === 'shown' ? order : linesMeant(props), edit);
  }

  return (
    <form className="tools" onSubmit={onSubmit}>
      <div>
        <label htmlFor="set-column">Let the column</label>
        <select id="set-column" value={column} onChange={(event) => setColumn(event.target.value)}>
          {choices.map(({ name, label }) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="set-what">do this</label>
        <select id="set-what" value={what} onChange={(event) => setWhat(whatOf(event.target.value))}>
          {Object.entries(WHATS).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {what === 'set' && (
        <div>
          <label htmlFor="set-text">Text (nothing empties the cells)</label>
          <input id="set-text" value={text} onChange={(event) => setText(event.target.value)} />
        </div>
      )}
      <div>
        <label htmlFor="set-scope">In</label>
        <select
          id="set-scope"
          value={scope}
          onChange={(event) => setScope(event.target.value === 'meant' ? 'meant' : 'shown')}
        >
          <option value="meant">
            {chosen.size > 0 ? `the ${chosen.size} lines chosen` : `the lines of the block (${meant.length})`}
          </option>
          <option value="shown">the {order.length} lines shown</option>
        </select>
      </div>
      <button type="submit" className="main">
        Write {scope === 'shown' ? order.length : meant.length} cells
      </button>
    </form>
  );
}

function whatOf(text: string): What {
  return text === 'measured' || text === 'unmeasured' ? text : 'set';
}
