'use client';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PREFERENCE_NAMES } from '#app/_ui/plan/plan-words.ts';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import type { PriceView } from '#lib/services/quotes/price-view.ts';
import { Field, FormEnd, SelectField } from './price-fields.client.tsx';
import sheet from './price-sheet.module.css';

type OwnPlan = NonNullable<PriceChoices['plan']>;

interface OptionFormProps {
  readonly enquiryId: number;
  readonly view: PriceView;
  readonly which: 'add' | 'change';
  readonly constraints: Readonly<Record<string, unknown>>;
  readonly onDone: (slot: number) => void;
  readonly onClose: () => void;
}

/** Name of an option, and for a further one its crews, days, sources and preference. */
export function OptionForm({ enquiryId, view, which, constraints, onDone, onClose }: OptionFormProps) {
  const { shown } = view;
  const summary = view.options.find(({ slot }) => slot === shown.slot);
  const isOwn = which === 'change' && shown.slot === 0;
  const [name, setName] = useState(which === 'add' ? '' : shown.choices.name);
  const [crews, setCrews] = useState(String(summary?.site.crews ?? 1));
  const [days, setDays] = useState(String(summary?.site.days ?? 1));
  const [sources, setSources] = useState<OwnPlan['sources_allowed']>([
    ...(summary?.site.sourcesAllowed ?? view.sources),
  ]);
  const [preference, setPreference] = useState<OwnPlan['preference']>(summary?.preference ?? 'cost');
  const [takeOver, setTakeOver] = useState(which === 'add');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');

  function plan(): OwnPlan | null {
    if (isOwn) return null;
    const held = shown.choices.plan?.constraints ?? {};
    return {
      crews: Number(crews),
      days: Number(days),
      sources_allowed: sources,
      preference,
      constraints: takeOver ? { ...constraints } : held,
    };
  }

  async function keep(event: FormEvent): Promise<void> {
    event.preventDefault();
    setBusy(true);
    const answer = await keepOption({ enquiryId, view, which, choices: { ...shown.choices, name, plan: plan() } });
    setBusy(false);
    if (answer.ok) onDone(slotIn(answer.value));
    else setProblem(answer.sentence);
  }

  return (
    <form onSubmit={keep} noValidate>
      <h2 id="option-title">{which === 'add' ? 'Add an option' : 'Change the option'}</h2>
      {which === 'add' ? (
        <p className={styles.soft}>
          It begins with the lines and discounts of the option that is shown, and is then planned on its own.
        </p>
      ) : null}
      <div className={sheet.fields}>
        <Field label="Name, such as “air kit, 1 crew”" value={name} onChange={setName} wide="yes" />
        {isOwn ? null : (
          <>
            <Size {...{ crews, days, preference, setCrews, setDays, setPreference }} />
            <Sources allowed={view.sources} chosen={sources} onChange={setSources} />
            <label className={sheet.wide}>
              <input type="checkbox" checked={takeOver} onChange={({ target }) => setTakeOver(target.checked)} /> Take
              over the parts that are locked, left out and pinned on Kits now
            </label>
          </>
        )}
      </div>
      <FormEnd
        problem={problem}
        busy={busy}
        words={which === 'add' ? 'Add the option' : 'Keep the change'}
        onClose={onClose}
      />
    </form>
  );
}

interface Keeping extends Pick<OptionFormProps, 'enquiryId' | 'view' | 'which'> {
  readonly choices: PriceChoices;
}

function keepOption({ enquiryId, view, which, choices }: Keeping) {
  const base = `/api/v1/enquiries/${enquiryId}/options`;
  const { slot, version } = view.shown;
  return which === 'add'
    ? send({ path: base, method: 'POST', body: { choices } })
    : send({ path: `${base}/${slot}`, method: 'PATCH', body: { version, choices } });
}

const PREFERENCES = ['cost', 'pieces', 'time', 'surest'] as const;

interface SizeProps {
  readonly crews: string;
  readonly days: string;
  readonly preference: OwnPlan['preference'];
  readonly setCrews: (crews: string) => void;
  readonly setDays: (days: string) => void;
  readonly setPreference: (preference: OwnPlan['preference']) => void;
}

function Size({ crews, days, preference, setCrews, setDays, setPreference }: SizeProps) {
  return (
    <>
      <Field label="Crews" value={crews} onChange={setCrews} inputMode="decimal" />
      <Field label="Days" value={days} onChange={setDays} inputMode="decimal" />
      <SelectField
        label="Plan for"
        value={preference}
        choices={PREFERENCES.map((value) => ({ value, name: PREFERENCE_NAMES[value] }))}
        onChange={(value) => setPreference(PREFERENCES.find((one) => one === value) ?? 'cost')}
      />
    </>
  );
}

interface SourcesProps {
  readonly allowed: PriceView['sources'];
  readonly chosen: OwnPlan['sources_allowed'];
  readonly onChange: (sources: OwnPlan['sources_allowed']) => void;
}

function Sources({ allowed, chosen, onChange }: SourcesProps) {
  return (
    <fieldset className={`${styles.choices} ${sheet.wide}`}>
      <legend>Power sources</legend>
      {allowed.map((source) => (
        <label key={source}>
          <input
            type="checkbox"
            checked={chosen.includes(source)}
            onChange={({ target }) =>
              onChange(allowed.filter((one) => (one === source ? target.checked : chosen.includes(one))))
            }
          />{' '}
          {source}
        </label>
      ))}
    </fieldset>
  );
}

function slotIn(value: unknown): number {
  return value !== null && typeof value === 'object' && 'slot' in value ? Number(value.slot) : 0;
}
