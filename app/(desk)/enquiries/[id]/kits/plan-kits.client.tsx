'use client';
import { useRouter } from 'next/navigation';
import { type ReactNode, useState, useTransition } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';
import type { PlanView } from '#lib/services/plans/plan-view.ts';
import type { ItemTools, ShownItem } from './kit-item.ts';
import { KitTable } from './kit-table.client.tsx';
import { type Changed, ChoicesList, linesText } from './plan-choices.client.tsx';

type Choices = EnquiryView['constraints'];
type Kit = PlanView['kits'][number];

interface KitsProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly choices: Choices;
  /** Names of all models by number. */
  readonly names: Readonly<Record<string, string>>;
  /** Roles in the order they are packed, with their heading. */
  readonly roles: readonly { readonly role: string; readonly heading: string }[];
  /** Roles of all models by number. */
  readonly partRoles: Readonly<Record<string, string>>;
  /** Tags of all lines. */
  readonly tags: readonly string[];
  readonly kits: readonly (Omit<Kit, 'items'> & { readonly facts: string; readonly items: readonly ShownItem[] })[];
  /** Starts working out what leaving each part out would cost. */
  readonly study?: ReactNode;
}

/** What every crew carries, and the choices laid on the plan. */
export function PlanKits(props: KitsProps) {
  const { enquiryId, version, choices, names, kits, roles, tags, partRoles } = props;
  const router = useRouter();
  const [problem, setProblem] = useState('');
  const [saving, setSaving] = useState(false);
  // Until the page is read again it holds the version before: a further choice would seem to be somebody else's.
  const [reading, startReading] = useTransition();
  const busy = saving || reading;
  const [last, setLast] = useState<Changed | null>(null);

  async function change(next: Choices, told: string): Promise<void> {
    setSaving(true);
    setProblem('');
    const path = `/api/v1/enquiries/${enquiryId}`;
    const saved = await send({ path, method: 'PATCH', body: { version, constraints: next } });
    const started = saved.ok ? await send({ path: `${path}/plan`, method: 'POST' }) : saved;
    setSaving(false);
    if (saved.ok) setLast(told === '' ? null : { told, before: choices });
    if (!started.ok) setProblem(started.sentence);
    startReading(() => router.refresh());
  }
  const named = (part: string): string => `${names[part] ?? 'unknown part'} (${part})`;
  const tools: ItemTools = {
    locked: choices.lockedParts,
    pins: choices.pins,
    tags,
    busy,
    leaveOut: (part) =>
      change(
        {
          ...choices,
          excludedParts: [...choices.excludedParts.filter((other) => other !== part), part],
          lockedParts: choices.lockedParts.filter((other) => other !== part),
        },
        `${named(part)} is left out`,
      ),
    keep: (part) =>
      change(
        { ...choices, lockedParts: [...choices.lockedParts.filter((other) => other !== part), part] },
        `${named(part)} is locked in`,
      ),
    // A line is done with one part of a role: a new pin takes the place of an earlier one.
    pin: (part, lines) =>
      change(
        {
          ...choices,
          pins: [
            ...choices.pins.filter((pin) => !lines.includes(pin.tag) || partRoles[pin.part] !== partRoles[part]),
            ...lines.map((tag) => ({ tag, part })),
          ],
        },
        `${linesText(lines)} done with ${named(part)}`,
      ),
  };

  return (
    <>
      <ChoicesList {...{ choices, names, busy, last, change }} />
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      {kits.length === 0 ? null : props.study}
      {kits.map((kit) => (
        <CrewKit key={kit.crew} {...{ kit, names, roles, tools }} />
      ))}
    </>
  );
}

interface CrewKitProps extends Pick<KitsProps, 'names' | 'roles'> {
  readonly kit: KitsProps['kits'][number];
  readonly tools: ItemTools;
}

function CrewKit({ kit, names, roles, tools }: CrewKitProps) {
  return (
    <section className={styles.panel} aria-labelledby={`crew-${kit.crew}`}>
      <div className={styles.spread}>
        <h2 id={`crew-${kit.crew}`}>Crew {kit.crew + 1} carries</h2>
        <span className={styles.soft}>
          <ShownWords>{kit.facts}</ShownWords>
        </span>
      </div>
      {kit.items.length === 0 ? (
        <p className={styles.soft}>This crew has no work in the shown plan.</p>
      ) : (
        <KitTable crew={kit.crew} items={kit.items} roles={roles} {...tools} />
      )}
      <Lacking kit={kit} names={names} />
    </section>
  );
}

/** What the crew goes without, as the papers say it too. */
function Lacking({ kit, names }: { readonly kit: Pick<Kit, 'lacking'>; readonly names: KitsProps['names'] }) {
  const lacking = kit.lacking ?? [];
  if (lacking.length === 0) return null;
  const told = lacking.map(({ item, count }) => `${count} × ${names[item] ?? ''} ${item}`);
  return (
    <p className={styles.notice}>
      Goes without, as no more are free on these dates: {told.join('; ')}. Agree before the hire who brings them, or
      hire on other dates.
    </p>
  );
}
