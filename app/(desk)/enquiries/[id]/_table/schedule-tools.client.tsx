'use client';

import Link from 'next/link';
import { useEffect, useState } from 'react';
import { countText } from '#lib/documents/words/print-values.ts';
import { FINDING_CHOICES, type FindingChoice, showsAll } from '#lib/schedule/line-filter.ts';
import { useLive } from '../live-enquiry.client.tsx';
import { FINDING_WORDS } from './filter-chips.client.tsx';
import { LineTools } from './line-tools.client.tsx';
import styles from './schedule-table.module.css';
import type { Panel, ToolsProps } from './tools-props.ts';
import { useBlockVerbs } from './use-block-verbs.client.tsx';
import type { Schedule } from './use-schedule.client.tsx';

interface ScheduleToolsProps extends ToolsProps {
  readonly onChosen: (ids: ReadonlySet<number>) => void;
}

const PANELS: readonly (readonly [Panel, string])[] = [
  ['replace', 'Find and replace'],
  ['set', 'Write a column'],
  ['columns', 'Columns'],
  ['go', 'Go to'],
  ['changes', 'Changes'],
];

/** What is done to the schedule as a whole. */
export function ScheduleTools(props: ScheduleToolsProps) {
  const { schedule, columns, walk, panel, onPanel } = props;
  const { saving } = schedule;
  const verbs = useBlockVerbs({ schedule, columns });
  return (
    <div className={styles.tools}>
      <div className="tools">
        <Finding schedule={schedule} />
        <Standing schedule={schedule} />
      </div>
      <div className={styles.buttons} role="toolbar" aria-label="Work on the schedule">
        <button type="button" disabled={saving.past.length + saving.jobs.length === 0} onClick={schedule.undo}>
          Undo
        </button>
        <button type="button" disabled={saving.future.length === 0} onClick={schedule.redo}>
          Redo
        </button>
        <span className={styles.gap} />
        <LineTools {...props} />
        <button type="button" onClick={() => verbs.fillDown(walk.current.block)} title="Ctrl+D">
          Fill down
        </button>
        <span className={styles.gap} />
        {PANELS.map(([name, words]) => (
          <button
            type="button"
            key={name}
            aria-pressed={panel === name}
            onClick={() => onPanel(panel === name ? undefined : name)}
          >
            {words}
          </button>
        ))}
        <Link className="button" href={`/enquiries/${schedule.enquiryId}/schedule`}>
          To print
        </Link>
      </div>
    </div>
  );
}

const TYPING_MS = 250;

/** Text and findings that a line must have to be shown. */
function Finding({ schedule }: { readonly schedule: Schedule }) {
  const { filter, show } = schedule.lines;
  const [text, setText] = useState(filter.text);
  useEffect(() => setText(filter.text), [filter.text]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked a moment after the last letter.
  useEffect(() => {
    if (text === filter.text) return undefined;
    const timer = setTimeout(() => void show({ ...filter, text }), TYPING_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <>
      <div>
        <label htmlFor="find">Find in the schedule</label>
        <input id="find" type="search" value={text} onChange={(event) => setText(event.target.value)} />
      </div>
      <div>
        <label htmlFor="only">Lines shown</label>
        <select
          id="only"
          value={filter.findings}
          onChange={(event) => void show({ ...filter, findings: findingOf(event.target.value) })}
        >
          {FINDING_CHOICES.map((name) => (
            <option key={name} value={name}>
              {FINDING_WORDS[name]}
            </option>
          ))}
        </select>
      </div>
    </>
  );
}

function findingOf(text: string): FindingChoice {
  return FINDING_CHOICES.find((name) => name === text) ?? 'all';
}

/** How many lines there are, whether all is saved, and who else is here. */
function Standing({ schedule }: { readonly schedule: Schedule }) {
  const { lines, saving } = schedule;
  const { others } = useLive();
  const { looked, lines: all } = lines.state;
  const isKept = saving.trouble !== '' || saving.refused.length > 0;
  const state = isKept ? 'not saved' : saving.jobs.length > 0 ? 'saving…' : 'saved';
  const shown = showsAll(lines.filter) ? countText(all, 'line') : `${lines.order.length} of ${countText(all, 'line')}`;
  return (
    <small className={styles.standing} aria-live="polite">
      <span>
        {shown}, {state}
      </span>
      {schedule.told !== '' && <span className={styles.told}> · {schedule.told}</span>}
      {looked < all && <span> · duties worked out so far: {looked}</span>}
      {others.length > 0 && <span className={styles.others}> · {others.join(', ')} here too</span>}
    </small>
  );
}
