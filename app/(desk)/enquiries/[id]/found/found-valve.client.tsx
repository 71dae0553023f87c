'use client';

import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import type { VisitedValve } from '#lib/services/visits/open-visits.ts';
import styles from './found-sheet.module.css';
import { type FoundName, type FoundText, nameOf } from './use-found.client.tsx';

interface FoundValveProps {
  readonly valve: VisitedValve;
  readonly cells: FoundText;
  readonly isDirty: boolean;
  readonly wrong: readonly string[];
  readonly onType: (column: FoundName, text: string) => void;
}

interface BlankSpec {
  readonly name: FoundName;
  readonly label: string;
  readonly example?: string;
  readonly choices?: readonly string[];
}

/** In the order in which a crew writes them down. */
const BLANKS: readonly BlankSpec[] = [
  { name: 'position_found', label: 'As found', example: 'open' },
  { name: 'turns', label: 'Turns', example: '24.5' },
  { name: 'full_stroke', label: 'Full stroke', choices: ['yes', 'no'] },
  { name: 'starting_torque', label: 'Starting torque', example: '140 N·m' },
  { name: 'running_torque', label: 'Running torque', example: '70 N·m' },
  { name: 'highest_torque', label: 'Highest torque', example: '160 N·m' },
  { name: 'position_left', label: 'As left', example: 'open' },
  { name: 'condition', label: 'Condition', choices: ['free', 'stiff', 'seized'] },
  { name: 'closes', label: 'Closes', choices: ['clockwise', 'anticlockwise'] },
  { name: 'wheel_diameter', label: 'Wheel', example: '400 mm' },
  { name: 'nut_size', label: 'Nut', example: '32 mm' },
  { name: 'defects', label: 'Defects' },
];

/** What each blank means, once for all valves: beside every blank of every valve it would only be in the way. */
export function FoundHelp() {
  return (
    <div className="help-strip no-print">
      What each blank means:{' '}
      {BLANKS.map(({ name, label }) => (
        <span key={name}>
          {label}
          <FieldHelp column={name} label={label} />
        </span>
      ))}
    </div>
  );
}

export function FoundValve({ valve, cells, isDirty, wrong, onType }: FoundValveProps) {
  const { now } = valve;
  return (
    <fieldset className={styles.valve}>
      <legend>
        {nameOf(valve)} <small>{valve.location}</small>
      </legend>
      <p className={styles.about}>
        Expected {valve.expectedTurns}.{' '}
        {isDirty ? (
          <strong>Not recorded yet.</strong>
        ) : now === null ? (
          ''
        ) : (
          `Recorded for ${now.visited_on} by ${now.by}.`
        )}
      </p>
      <div className={styles.blanks}>
        {BLANKS.map((blank) => (
          <Blank
            key={blank.name}
            blank={blank}
            text={cells[blank.name] ?? ''}
            isWrong={wrong.includes(blank.name)}
            onType={(text) => onType(blank.name, text)}
          />
        ))}
      </div>
    </fieldset>
  );
}

interface BlankProps {
  readonly blank: BlankSpec;
  readonly text: string;
  readonly isWrong: boolean;
  readonly onType: (text: string) => void;
}

function Blank({ blank, text, isWrong, onType }: BlankProps) {
  const { name, label, example, choices } = blank;
  if (choices === undefined)
    return (
      <label className={name === 'defects' ? styles.wide : undefined}>
        {label}
        <input
          value={text}
          placeholder={example}
          aria-invalid={isWrong}
          autoComplete="off"
          onChange={(event) => onType(event.target.value)}
        />
      </label>
    );
  return (
    <label>
      {label}
      <select value={text} aria-invalid={isWrong} onChange={(event) => onType(event.target.value)}>
        {['', ...choices].map((choice) => (
          <option key={choice} value={choice}>
            {choice === '' ? (name === 'full_stroke' ? 'yes, taken so' : '—') : choice}
          </option>
        ))}
      </select>
    </label>
  );
}
