import type { Metadata } from 'next';
import { Fragment } from 'react';
import { strangerAsks } from '#app/_lib/stranger.ts';
import { formTicket } from '#lib/services/self-service/bot-check.ts';
import { openHouseCard } from '#lib/services/self-service/house-card.ts';
import type { Language } from '#lib/wording/language.ts';
import { choiceWords } from '#lib/wording/reason-words.ts';
import { say } from '#lib/wording/wording.ts';
import { DeviceScript, KeptLine, KeptLinks } from './_blocks/device-blocks.tsx';
import formLook from './_blocks/form.module.css';
import frameLook from './_blocks/frame.module.css';
import { Choice, Field, Refused, type SearchParams, textIn } from './_blocks/frame-blocks.tsx';
import { type Given, givenBack } from './_blocks/given-back.ts';
import { ListFields } from './_blocks/list-fields.tsx';
import { Picture, textOf } from './_blocks/question-form.tsx';
import { questionPicture } from './_blocks/question-picture.ts';
import sheetLook from './_blocks/sheet.module.css';
import toldLook from './_blocks/told.module.css';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say((await strangerAsks()).language, 'frame.name') };
}

/** What is asked first of any valve; everything else is asked only where it changes the answer. */
const FIRST = {
  driven_by: ['handwheel', 'key cap', 'nut', 'gearbox wheel', 'pillar'],
  valve_type: ['gate', 'globe', 'butterfly', 'penstock', 'hydrant'],
  condition: ['free', 'stiff', 'seized'],
} as const;

export default async function StartPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { context, language } = await strangerAsks();
  const search = await searchParams;
  const refused = textIn(search.refused);
  const given = givenBack(search);
  const ticket = formTicket(context);
  const card = openHouseCard(context);
  const firstDay = card.ok ? card.value.firstDay : '';
  const options = (column: keyof typeof FIRST) => [
    ...FIRST[column].map((text) => ({ value: text, words: choiceWords(language, { column, text }) })),
    { value: '', words: say(language, 'answer.unknown') },
  ];
  return (
    <>
      <h1>{say(language, 'start.title')}</h1>
      <p className={frameLook.lead}>{say(language, 'start.lead')}</p>
      <Refused code={refused} wait={textIn(search.wait)} language={language} />
      <KeptLinks language={language} />
      <form
        method="post"
        action="/hire/start"
        encType="multipart/form-data"
        data-ticket={ticket}
        data-keep="first"
        data-given={refused === undefined ? undefined : ''}
        className={sheetLook.sheet}
      >
        <Hidden ticket={ticket} language={language} />
        <Picture drawing={questionPicture('driven_by', language)} label={textOf(language, 'how', 'driven_by')} />
        <Choice
          name="driven_by"
          legend={textOf(language, 'ask', 'driven_by')}
          options={options('driven_by')}
          chosen={given.driven_by ?? ''}
        />
        <Choice
          layout="beside"
          name="valve_type"
          legend={textOf(language, 'ask', 'valve_type')}
          options={options('valve_type')}
          chosen={given.valve_type ?? ''}
        />
        <SizeField language={language} size={given.size} />
        <Choice
          layout="beside"
          name="condition"
          legend={textOf(language, 'ask', 'condition')}
          options={options('condition')}
          chosen={given.condition ?? ''}
        />
        <ZoneAndDates language={language} firstDay={firstDay} given={given} />
        <button type="submit" name="what" value="valve" className={`button main ${formLook.wide}`}>
          {say(language, 'start.go')}
        </button>
        <OwnList language={language} given={given} />
        <KeptLine language={language} />
      </form>
      <script src="/hire/proof.js" defer />
      <DeviceScript />
    </>
  );
}

interface SizeProps {
  readonly language: Language;
  readonly size: string | undefined;
}

function SizeField({ language, size }: SizeProps) {
  return (
    <Field name="size" label={say(language, 'start.own')}>
      <input id="size" name="size" autoComplete="off" placeholder="DN 150" maxLength={40} defaultValue={size} />
      <small>{textOf(language, 'how', 'size')}</small>
    </Field>
  );
}

/** A whole list instead of one valve, folded away until someone has one. */
function OwnList({ language, given }: { readonly language: Language; readonly given: Given }) {
  return (
    <details className={toldLook.list} open={given.what === 'list'}>
      <summary>{say(language, 'start.list-title')}</summary>
      <ListFields language={language} rows={given.rows} />
      <button type="submit" name="what" value="list" className={`button ${formLook.wide}`}>
        {say(language, 'start.list-go')}
      </button>
    </details>
  );
}

/** The seal of the form, room for a script's proof, and a field that no person sees. */
function Hidden({ ticket, language }: { readonly ticket: string; readonly language: Language }) {
  return (
    <>
      <input type="hidden" name="ticket" value={ticket} />
      <input type="hidden" name="proof" defaultValue="" />
      <div className={formLook.trap} aria-hidden="true">
        <label htmlFor="website">{say(language, 'start.trap')}</label>
        <input id="website" name="website" tabIndex={-1} autoComplete="off" />
      </div>
    </>
  );
}

interface ZoneAndDatesProps {
  readonly language: Language;
  readonly firstDay: string;
  readonly given: Given;
}

function ZoneAndDates({ language, firstDay, given }: ZoneAndDatesProps) {
  return (
    <Fragment>
      <Choice
        layout="beside"
        name="zone"
        legend={say(language, 'start.zone')}
        chosen={given.zone ?? ''}
        options={[
          { value: 'none', words: say(language, 'choice.no') },
          { value: '1', words: say(language, 'choice.yes') },
          { value: '', words: say(language, 'answer.unknown') },
        ]}
      />
      <div className={formLook.pair}>
        <Field name="starts_on" label={say(language, 'start.when')}>
          <input
            id="starts_on"
            name="starts_on"
            type="date"
            min={firstDay}
            defaultValue={given.starts_on ?? firstDay}
            required
          />
        </Field>
        <Field name="days" label={say(language, 'start.days')}>
          <input
            id="days"
            name="days"
            type="number"
            min={1}
            max={60}
            defaultValue={given.days ?? 1}
            required
            inputMode="numeric"
          />
        </Field>
      </div>
    </Fragment>
  );
}
