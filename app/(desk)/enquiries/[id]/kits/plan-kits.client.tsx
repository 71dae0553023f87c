'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_ui/plan/plan-send.ts';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';
import type { PlanView } from '#lib/services/plans/plan-view.ts';

type Choices = EnquiryView['constraints'];
type Kit = PlanView['kits'][number];
type Item = Kit['items'][number];

interface KitsProps {
  readonly enquiryId: number;
  readonly version: number;
  readonly choices: Choices;
  /** Names of all models by number. */
  readonly names: Readonly<Record<string, string>>;
  /** Roles in the order they are packed, with their heading. */
  readonly roles: readonly { readonly role: string; readonly heading: string }[];
  readonly kits: readonly (Kit & { readonly facts: string })[];
}

/** What every crew carries, and the choices laid on the plan. */
export function PlanKits(props: KitsProps) {
  const { enquiryId, version, choices, names, kits, roles } = props;
  const router = useRouter();
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);

  async function change(next: Choices): Promise<void> {
    setBusy(true);
    setProblem('');
    const path = `/api/v1/enquiries/${enquiryId}`;
    const saved = await send({ path, method: 'PATCH', body: { version, constraints: next } });
    const started = saved.ok ? await send({ path: `${path}/plan`, method: 'POST' }) : saved;
    setBusy(false);
    if (!started.ok) setProblem(started.sentence);
    router.refresh();
  }
  const leaveOut = (part: string) =>
    change({
      ...choices,
      excludedParts: [...choices.excludedParts.filter((other) => other !== part), part],
      lockedParts: choices.lockedParts.filter((other) => other !== part),
    });
  const keep = (part: string) =>
    change({ ...choices, lockedParts: [...choices.lockedParts.filter((other) => other !== part), part] });

  return (
    <>
      <ChoicesList choices={choices} names={names} busy={busy} change={change} />
      {problem === '' ? null : (
        <p className={styles.refused} role="alert">
          {problem}
        </p>
      )}
      {kits.map((kit) => (
        <section key={kit.crew} className={styles.panel} aria-labelledby={`crew-${kit.crew}`}>
          <div className={styles.spread}>
            <h2 id={`crew-${kit.crew}`}>Crew {kit.crew + 1} carries</h2>
            <span className={styles.soft}>
              <ShownWords>{kit.facts}</ShownWords>
            </span>
          </div>
          {kit.items.length === 0 ? <p className={styles.soft}>This crew has no work in the shown plan.</p> : null}
          {kit.items.length === 0 ? null : (
            <KitTable
              crew={kit.crew}
              items={kit.items}
              locked={choices.lockedParts}
              {...{ roles, busy, leaveOut, keep }}
            />
          )}
          <Lacking kit={kit} names={names} />
        </section>
      ))}
    </>
  );
}

/** What the crew goes without, as the papers say it too. */
function Lacking({ kit, names }: { readonly kit: Kit; readonly names: KitsProps['names'] }) {
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

interface ListProps {
  readonly choices: Choices;
  readonly names: Readonly<Record<string, string>>;
  readonly busy: boolean;
  readonly change: (next: Choices) => void;
}

function ChoicesList({ choices, names, busy, change }: ListProps) {
  const { lockedParts, excludedParts, pins } = choices;
  const name = (part: string) => `${names[part] ?? 'unknown part'} (${part})`;
  const chips = [
    ...lockedParts.map((part) => ({
      words: `Locked in: ${name(part)}`,
      next: { ...choices, lockedParts: lockedParts.filter((other) => other !== part) },
    })),
    ...excludedParts.map((part) => ({
      words: `Left out: ${name(part)}`,
      next: { ...choices, excludedParts: excludedParts.filter((other) => other !== part) },
    })),
    ...pins.map((pin) => ({
      words: `${pin.tag} is done with ${name(pin.part)}`,
      next: { ...choices, pins: pins.filter((other) => other !== pin) },
    })),
  ];
  return (
    <section className={styles.panel} aria-labelledby="choices">
      <h2 id="choices">Your choices</h2>
      {chips.length === 0 ? (
        <p className={styles.soft}>
          None: the plan may use any part that fits and is free. Lock a part in or leave one out below; the plan is then
          worked out again.
        </p>
      ) : (
        <ul className={`${styles.bare} ${styles.row}`}>
          {chips.map((chip) => (
            <li key={chip.words} className={styles.chip}>
              {chip.words}
              <button
                type="button"
                className={styles.small}
                disabled={busy}
                aria-label={`Take back: ${chip.words}`}
                onClick={() => change(chip.next)}
              >
                Take back
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

interface ItemTools {
  readonly locked: readonly string[];
  readonly busy: boolean;
  readonly leaveOut: (part: string) => void;
  readonly keep: (part: string) => void;
}

interface KitTableProps extends ItemTools {
  readonly crew: number;
  readonly roles: KitsProps['roles'];
  readonly items: readonly Item[];
}

/** What one crew carries, role by role. */
function KitTable({ crew, roles, items, ...tools }: KitTableProps) {
  return (
    <PlanWide label={`Parts that crew ${crew + 1} carries`}>
      <table className={styles.kit}>
        <thead>
          <tr>
            <th scope="col" className={styles.number}>
              Count
            </th>
            <th scope="col">Part</th>
            <th scope="col">Needed for</th>
            <th scope="col" className={styles.screenOnly}>
              Choice
            </th>
          </tr>
        </thead>
        {roles.map(({ role, heading }) => (
          <RoleItems key={role} heading={heading} items={items.filter((item) => item.role === role)} {...tools} />
        ))}
      </table>
    </PlanWide>
  );
}

interface RoleItemsProps extends ItemTools {
  readonly heading: string;
  readonly items: readonly Item[];
}

function RoleItems({ heading, items, ...tools }: RoleItemsProps) {
  if (items.length === 0) return null;
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={4} className={styles.group}>
          {heading}
        </th>
      </tr>
      {items.map((item) => (
        <tr key={item.number}>
          <td className={styles.number}>{item.count}</td>
          <th scope="row">
            {item.name}
            <br />
            <span className={styles.soft}>{item.number}</span>
          </th>
          <td className={styles.sentence}>{needText(item)}</td>
          <td className={styles.screenOnly}>
            <ItemChoice item={item} {...tools} />
          </td>
        </tr>
      ))}
    </tbody>
  );
}

function ItemChoice({ item, locked, busy, leaveOut, keep }: ItemTools & { readonly item: Item }) {
  return (
    <span className={styles.row}>
      {locked.includes(item.number) ? (
        <span className={styles.soft}>✓ locked in</span>
      ) : (
        <button
          type="button"
          className={styles.small}
          disabled={busy}
          aria-label={`Lock in ${item.name} ${item.number}`}
          onClick={() => keep(item.number)}
        >
          Lock in
        </button>
      )}
      <button
        type="button"
        className={styles.small}
        disabled={busy}
        aria-label={`Leave out ${item.name} ${item.number}`}
        onClick={() => leaveOut(item.number)}
      >
        Leave out
      </button>
    </span>
  );
}

function needText({ neededFor, neededForCount }: Item): string {
  if (neededForCount === 0) return 'the crew as a whole (supply, spares, packing)';
  const more = neededForCount - neededFor.length;
  return `${neededFor.join(', ')}${more > 0 ? ` and ${more} more lines` : ''}`;
}
