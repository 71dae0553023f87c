'use client';

import { useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import { ShownSentence, useUnits } from '#app/_ui/shown-units.client.tsx';
import type { LineInput } from '#lib/services/lines/line-inputs.ts';
import { formatRange } from '#lib/units/format-quantity.ts';
import { useTaking } from './use-taking.client.tsx';
import { type Tried, useStill, useWhatIf } from './use-what-if.client.tsx';
import { WhatIfAnswer } from './what-if-answer.tsx';
import { WhatIfInput } from './what-if-input.client.tsx';

interface WhatIfProps {
  readonly enquiryId: number;
  readonly lineId: number;
  readonly tag: string;
  readonly inputs: readonly LineInput[];
  readonly cells: Readonly<Record<string, string | undefined>>;
}

/** Changes one input of the line for a look; the line itself stays as it is until the value is taken. */
export function WhatIfPanel({ enquiryId, lineId, tag, inputs, cells }: WhatIfProps) {
  const path = `/api/v1/enquiries/${enquiryId}/lines`;
  const answer = useWhatIf(`${path}/${lineId}`);
  const first = inputs[0]?.column ?? 'size';
  const [tried, setTried] = useState<Tried>({ column: first, text: cells[first] ?? '', measured: false });
  const taking = useTaking(path);
  const isOther = tried.text.trim() !== (cells[tried.column] ?? '');

  function choose(column: string): void {
    setTried({ column, text: cells[column] ?? '', measured: false });
    answer.forget();
  }

  async function take(): Promise<void> {
    if (isOther && (await taking.take({ ...tried, lineId }))) answer.forget();
  }

  return (
    <form
      className={styles.bare}
      onSubmit={(event) => {
        event.preventDefault();
        void take();
      }}
    >
      <p className={styles.lead}>
        Change one input and see at once what it does to the torques. Nothing is saved until the value is taken.
      </p>
      <WhatIfInput
        inputs={inputs}
        cells={cells}
        tried={tried}
        onChoose={choose}
        onTry={(next) => {
          setTried(next);
          answer.attempt(next);
        }}
      />
      <Doubts problems={answer.problems} column={tried.column} />
      <Trouble sentence={answer.trouble || taking.trouble} />
      {answer.change === null ? null : <WhatIfAnswer change={answer.change} tag={tag} />}
      <StartTold change={answer.change} />
      <div className={styles.row}>
        <button type="submit" className={styles.main} disabled={!isOther || taking.busy}>
          Take this value into the line
        </button>
        <button
          type="button"
          className={styles.button}
          disabled={!isOther && answer.change === null}
          onClick={() => choose(tried.column)}
        >
          Back to what holds
        </button>
        {taking.undo === null ? null : (
          <button type="button" className={styles.button} disabled={taking.busy} onClick={() => void taking.takeBack()}>
            Undo what was taken
          </button>
        )}
        <span role="status">{taking.told}</span>
      </div>
    </form>
  );
}

type Answer = ReturnType<typeof useWhatIf>;

function Doubts({ problems, column }: { readonly problems: Answer['problems']; readonly column: string }) {
  return (
    <div aria-live="polite" id="what-if-doubts">
      {problems
        .filter((problem) => problem.column === column)
        .map((problem) => (
          <p key={problem.sentence} className={styles.notice}>
            <ShownSentence told={problem} /> {problem.remedy}
          </p>
        ))}
    </div>
  );
}

/** Says the new torque once the value stands still, for those who do not see the ladder. */
function StartTold({ change }: { readonly change: Answer['change'] }) {
  const system = useUnits();
  const words = useWords();
  const start = change?.figures[0];
  const told = useStill(
    start === undefined
      ? ''
      : `Torque to start opening ${formatRange(start.after, system)}, was ${formatRange(start.before, system)}.`,
  );
  return (
    <p className={styles.unseen} role="status">
      {words(told)}
    </p>
  );
}

function Trouble({ sentence }: { readonly sentence: string }) {
  return <div role="alert">{sentence === '' ? null : <p className={styles.refused}>{sentence}</p>}</div>;
}
