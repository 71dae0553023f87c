import type { ValveOutcome } from '#lib/services/self-service/ask-valve.ts';
import { amountIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { reasonWords } from '#lib/wording/reason-words.ts';
import { say } from '#lib/wording/wording.ts';
import sheetLook from './sheet.module.css';
import toldLook from './told.module.css';
import { Ranges } from './valve-answers.tsx';

/** What is known of the valve as it stands: its torque, what its hire would come to, or why the house looks first. */
export function SoFar({ outcome, language }: { readonly outcome: ValveOutcome; readonly language: Language }) {
  const { handOver, hire } = outcome;
  return (
    <section className={sheetLook.sofar} aria-labelledby="so-far">
      <h2 id="so-far">{say(language, 'valve.so-far')}</h2>
      <Ranges valve={outcome} language={language} />
      {hire !== null && (
        <p>
          {say(language, hire.days === 1 ? 'valve.hire-one' : 'valve.hire', {
            amount: amountIn(language, hire),
            currency: hire.currency,
            days: hire.days,
          })}
        </p>
      )}
      {handOver.length > 0 && (
        <>
          <p>{say(language, 'valve.desk')}</p>
          <ul className={toldLook.reasons}>
            {handOver.map((reason) => (
              <li key={reason.code}>{reasonWords(language, reason)}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
