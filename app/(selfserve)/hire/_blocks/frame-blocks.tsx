import type { ReactNode } from 'react';
import { answerAsRefused } from '#app/_lib/answer-status.ts';
import { secondsToWait, statusOf } from '#app/_lib/respond.ts';
import type { Refused as RefusedReason } from '#lib/kernel/result.ts';
import type { Language } from '#lib/wording/language.ts';
import { refusalWords } from '#lib/wording/reason-words.ts';
import { say } from '#lib/wording/wording.ts';
import { DeviceScript } from './device-blocks.tsx';
import formLook from './form.module.css';
import sheetLook from './sheet.module.css';

interface RefusedProps {
  readonly code: string | undefined;
  /** Seconds until it is worth asking again, where the refusal named them. */
  readonly wait?: string | undefined;
  readonly language: Language;
}

/** What was refused of the form that was sent before this page; nothing where nothing was. */
export function Refused({ code, wait, language }: RefusedProps) {
  if (code === undefined || code === '') return null;
  const seconds = Number(wait);
  answerAsRefused(Number.isInteger(seconds) && seconds > 0 ? { code, retry_after_s: seconds } : { code });
  return (
    <p role="alert" className={sheetLook.refused}>
      {refusalWords(language, code)}
    </p>
  );
}

/** Instead of a page that cannot be shown: a link that leads nowhere, has expired, or too many at once. */
export function NoPage({ reason, language }: { readonly reason: RefusedReason; readonly language: Language }) {
  const { code } = reason;
  const wait = secondsToWait(reason);
  answerAsRefused(wait === undefined ? { code } : { code, retry_after_s: wait });
  return (
    <section className={sheetLook.sheet} data-gone-order={statusOf(code) === 410 ? '' : undefined}>
      <h1>{say(language, 'trouble.title')}</h1>
      <p>{refusalWords(language, code)}</p>
      <p>
        <a className="button main" href="/hire">
          {say(language, 'trouble.start')}
        </a>
      </p>
      <DeviceScript />
    </section>
  );
}

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly children: ReactNode;
}

export function Field({ name, label, children }: FieldProps) {
  return (
    <div className={formLook.field}>
      <label htmlFor={name}>{label}</label>
      {children}
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly legend: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly chosen: string;
  /** Short answers stand beside each other. */
  readonly layout?: 'beside' | 'below';
}

/** A choice as large buttons; “I don’t know” is one of them. */
export function Choice({ name, legend, options, chosen, layout = 'below' }: ChoiceProps) {
  return (
    <fieldset className={layout === 'beside' ? `${formLook.choice} ${formLook.beside}` : formLook.choice}>
      <legend>{legend}</legend>
      {options.map(({ value, words }) => (
        <label key={value}>
          <input type="radio" name={name} value={value} defaultChecked={value === chosen} />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

export type SearchParams = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

export function textIn(value: string | readonly string[] | undefined): string | undefined {
  return typeof value === 'string' ? value.slice(0, 60) : undefined;
}
