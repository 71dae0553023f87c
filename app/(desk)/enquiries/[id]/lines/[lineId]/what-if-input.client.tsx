'use client';

import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords, useWords } from '#app/_ui/shown-forms.client.tsx';
import { useUnits } from '#app/_ui/shown-units.client.tsx';
import type { LineInput } from '#lib/services/lines/line-inputs.ts';
import { formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import type { Tried } from './use-what-if.client.tsx';

interface InputProps {
  readonly inputs: readonly LineInput[];
  readonly cells: Readonly<Record<string, string | undefined>>;
  readonly tried: Tried;
  readonly onChoose: (column: string) => void;
  readonly onTry: (tried: Tried) => void;
}

/** Which input, and its other value: typed with its unit, chosen, or dragged. */
export function WhatIfInput({ inputs, cells, tried, onChoose, onTry }: InputProps) {
  const input = inputs.find(({ column }) => column === tried.column);
  if (input === undefined) return null;
  const listed = cells[input.column] ?? '';
  const set = (text: string) => onTry({ ...tried, text });
  return (
    <>
      <div className={styles.row}>
        <label className={styles.field}>
          Input
          <select className={styles.input} value={tried.column} onChange={(event) => onChoose(event.target.value)}>
            {inputs.map(({ column, label }) => (
              <option key={column} value={column}>
                {label}
                {(cells[column] ?? '') === '' ? '' : ' (on the list)'}
              </option>
            ))}
          </select>
        </label>
        <FieldHelp key={input.column} column={input.column} label={input.label} />
        {input.choices.length > 0 ? (
          <Choice text={tried.text} words={['', listed, ...input.choices]} onSet={set} />
        ) : (
          <Text text={tried.text} example={input.example} onSet={set} />
        )}
        {input.slider === null || input.now === null ? null : (
          <Slider key={input.column} label={input.label} now={input.now} ends={input.slider} onSet={set} />
        )}
        <Basis measured={tried.measured} onSet={(measured) => onTry({ ...tried, measured })} />
      </div>
      <Now input={input} listed={listed} />
    </>
  );
}

interface SetProps {
  readonly onSet: (text: string) => void;
}

function Choice({ text, words, onSet }: SetProps & { readonly text: string; readonly words: readonly string[] }) {
  return (
    <label className={styles.field}>
      What if it were
      <select className={styles.input} value={text} onChange={(event) => onSet(event.target.value)}>
        {[...new Set(words)].map((word) => (
          <option key={word} value={word}>
            {word === '' ? 'not known' : word}
          </option>
        ))}
      </select>
    </label>
  );
}

function Text({ text, example, onSet }: SetProps & { readonly text: string; readonly example: string }) {
  return (
    <label className={styles.field}>
      What if it were (with its unit)
      <input
        className={styles.input}
        value={text}
        placeholder={`like ${example}`}
        autoComplete="off"
        aria-describedby="what-if-doubts"
        onChange={(event) => onSet(event.target.value)}
      />
    </label>
  );
}

function Basis({ measured, onSet }: { readonly measured: boolean; readonly onSet: (measured: boolean) => void }) {
  return (
    <fieldset className={styles.choices}>
      <legend>It would be</legend>
      {(['stated', 'measured'] as const).map((basis) => (
        <label key={basis}>
          <input
            type="radio"
            name="what-if-basis"
            checked={measured === (basis === 'measured')}
            onChange={() => onSet(basis === 'measured')}
          />{' '}
          {basis}
        </label>
      ))}
    </fieldset>
  );
}

const NOTCHES = 200;

interface SliderProps extends SetProps {
  readonly label: string;
  readonly now: NonNullable<LineInput['now']>;
  readonly ends: NonNullable<LineInput['slider']>;
}

/** Equal steps are equal ratios, so that small and large values can both be hit. */
function Slider({ label, now, ends, onSet }: SliderProps) {
  const whole = Math.log(ends.high / ends.low);
  const at = (notch: number) => ends.low * Math.exp((whole * notch) / NOTCHES);
  const system = useUnits();
  const text = (value: number) => textOf(value, { unit: now.unit, system });
  return (
    <label className={styles.field}>
      Or drag, <ShownWords>{`${text(ends.low)} to ${text(ends.high)}`}</ShownWords>
      <input
        type="range"
        min={0}
        max={NOTCHES}
        defaultValue={Math.round((NOTCHES * Math.log(now.nominal / ends.low)) / whole)}
        aria-label={`${label}, drag`}
        onChange={(event) => {
          const value = text(at(Number(event.target.value)));
          event.target.setAttribute('aria-valuetext', value);
          onSet(value);
        }}
      />
    </label>
  );
}

/** A text that the list’s own reader understands. */
function textOf(
  value: number,
  { unit, system }: { readonly unit: NonNullable<LineInput['now']>['unit']; readonly system: UnitSystem },
): string {
  return unit === 's' ? `${Math.round(value)} s` : formatQuantity({ value, unit, system });
}

function Now({ input, listed }: { readonly input: LineInput; readonly listed: string }) {
  const system = useUnits();
  const words = useWords();
  const value = input.now === null ? input.said : formatRange(input.now, system);
  return (
    <p className={styles.soft}>
      {input.help} {value === null ? 'Nothing is taken for it now.' : words(`Now: ${value}`)}
      {input.now === null ? '' : words(` (${input.now.basis}). ${sourceIn(input.now.source, system)}`)}
      {listed === '' ? ' The list does not give it.' : ''}
    </p>
  );
}
