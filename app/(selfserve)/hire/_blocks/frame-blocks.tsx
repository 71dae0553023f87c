import type { ReactNode } from 'react';
import type { Language } from '#lib/wording/language.ts';
import { refusalWords } from '#lib/wording/reason-words.ts';
import { say } from '#lib/wording/wording.ts';
import look from './hire.module.css';

/** What was refused of the form that was sent before this page; nothing where nothing was. */
export function Refused({ code, language }: { readonly code: string | undefined; readonly language: Language }) {
  if (code === undefined || code === '') return null;
  return (
    <p role="alert" className={look.refused}>
      {refusalWords(language, code)}
    </p>
  );
}

/** Instead of a page that cannot be shown: a link that leads nowhere, has expired, or too many at once. */
export function NoPage({ code, language }: { readonly code: string; readonly language: Language }) {
  return (
    <section className={look.sheet}>
      <h1>{say(language, 'trouble.title')}</h1>
      <p>{refusalWords(language, code)}</p>
      <p>
        <a className="button main" href="/hire">
          {say(language, 'trouble.start')}
        </a>
      </p>
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
    <div className={look.field}>
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
}

/** A choice as large buttons; “I don’t know” is one of them. */
export function Choice({ name, legend, options, chosen }: ChoiceProps) {
  return (
    <fieldset className={look.choice}>
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
