import { asking } from '#app/_lib/asking.ts';
import { type ShownTexts, shownTexts } from '#app/_lib/person-forms.ts';
import { idOf } from '#app/_lib/respond.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { CrewDays } from '#app/_ui/crew-days.tsx';
import { PlanEffort } from '#app/_ui/plan-effort.tsx';
import { PlanRefused } from '#app/_ui/plan-refused.tsx';
import styles from '#app/_ui/plan-sheet.module.css';
import { gapText, PREFERENCE_NAMES, proofText, ROLE_NAMES } from '#app/_ui/plan-words.ts';
import { RepairDone } from '#app/_ui/repair-done.client.tsx';
import { countText, hoursText, massText } from '#lib/documents/print-values.ts';
import { listModelsView } from '#lib/services/list-models-view.ts';
import { type EnquiryView, openEnquiry } from '#lib/services/open-enquiry.ts';
import { type PlanView, readPlanView } from '#lib/services/plan-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { groupLines, groupRefusals } from './group-plan.ts';
import { PlanKits } from './plan-kits.client.tsx';
import { PlanLines, PlanRefusals } from './plan-lines.client.tsx';
import { PlanPreferences } from './plan-preferences.client.tsx';
import { PlanRun } from './plan-run.client.tsx';

export const dynamic = 'force-dynamic';

const ROLES = Object.entries(ROLE_NAMES).map(([role, heading]) => ({ role, heading }));

export default async function KitsPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiryId = idOf((await params).id);
  const house = await asking();
  const enquiry = openEnquiry(house, enquiryId);
  if (!enquiry.ok) return <PlanRefused sentence={enquiry.reason.sentence} />;
  const view = readPlanView(house, { enquiryId });
  if (!view.ok) return <PlanRefused sentence={view.reason.sentence} />;
  const models = listModelsView(house);
  const names = Object.fromEntries((models.ok ? models.value : []).map((model) => [model.number, model.name]));
  const { plan, lines, constraints, version } = enquiry.value;
  return (
    <div className={styles.page}>
      <PlanRun enquiryId={enquiryId} state={plan} lines={lines} />
      <RepairDone enquiryId={enquiryId} replan="yes" />
      {view.value === null ? (
        // Without a plan the choices must still be within reach: one of them may be why there is none.
        <PlanKits {...{ enquiryId, version, names }} choices={constraints} roles={ROLES} kits={[]} />
      ) : (
        <Planned
          enquiry={enquiry.value}
          view={view.value}
          names={names}
          system={await unitSystem()}
          texts={await shownTexts()}
        />
      )}
    </div>
  );
}

interface PlannedProps {
  readonly enquiry: EnquiryView;
  readonly view: PlanView;
  readonly names: Readonly<Record<string, string>>;
  readonly system: UnitSystem;
  readonly texts: ShownTexts;
}

function Planned({ enquiry, view, names, system, texts }: PlannedProps) {
  const { id: enquiryId, version, constraints } = enquiry;
  const groups = groupLines(view.lines, { names, system });
  const refusals = groupRefusals(view.unserved);
  const refused = new Set(view.unserved.map((line) => line.tag));
  const left = view.lines.filter((line) => line.served < line.asked && !refused.has(line.tag)).length;
  return (
    <>
      <section className={styles.panel} aria-labelledby="plans">
        <h2 id="plans">Plans side by side</h2>
        <PlanPreferences
          enquiryId={enquiryId}
          version={version}
          shown={view.shown}
          rows={preferenceRows(view, { system, texts })}
        />
      </section>
      <PlanKits
        {...{ enquiryId, version, names }}
        choices={constraints}
        roles={ROLES}
        kits={view.kits.map((kit) => ({
          ...kit,
          facts: `${hoursText(kit.hours)} of work · ${massText(kit.mass_kg, system)} · ${countText(kit.pieces, 'piece')}`,
        }))}
      />
      <CrewDays crews={view.crewDays} system={system} />
      <section className={styles.panel} aria-labelledby="lines">
        <h2 id="lines">Which assembly does which line</h2>
        <p className={styles.lead}>
          Limiter figures are estimates until measured: begin at the start value, raise it step by step, and never pass
          the ceiling.
        </p>
        {groups.length === 0 ? (
          <p className={styles.soft}>No line is served in this plan.</p>
        ) : (
          <PlanLines enquiryId={enquiryId} groups={groups} />
        )}
      </section>
      <section className={styles.panel} aria-labelledby="unserved">
        <h2 id="unserved">Not served{refusals.length > 0 ? `: ${countText(view.unserved.length, 'line')}` : ''}</h2>
        {refusals.length === 0 ? (
          <p className={styles.soft}>Equipment was found for every line.</p>
        ) : (
          <PlanRefusals enquiryId={enquiryId} groups={refusals} />
        )}
        {left > 0 ? (
          <p className={styles.notice}>
            {countText(left, 'line')} could be served by equipment but not in full. {shortageText(view, names)}
          </p>
        ) : null}
      </section>
      <section className={styles.panel}>
        <PlanEffort view={view} />
      </section>
    </>
  );
}

/** Stock where more pieces would serve more valves, otherwise the hours. */
function shortageText({ shortage }: PlanView, names: Readonly<Record<string, string>>): string {
  if (shortage === null) return 'Plan again to see what is short.';
  if (shortage.valvesMore === 0 || shortage.short.length === 0) {
    return 'The hours of the crews in these days do not reach: more days or another crew would.';
  }
  const pieces = shortage.short.map(
    ({ item, wanted, free }) => `${names[item] ?? item} (${item}): ${wanted} wanted, ${free} free`,
  );
  return `${countText(shortage.valvesMore, 'valve')} more could be served if these pieces were free: ${pieces.join('; ')}.`;
}

function preferenceRows({ summaries, currency }: PlanView, { system, texts }: Pick<PlannedProps, 'system' | 'texts'>) {
  const money = (minor: number) => `${texts.money(minor, currency)} ${currency}`;
  return summaries.map((summary) => ({
    preference: summary.preference,
    name: PREFERENCE_NAMES[summary.preference],
    served: `${summary.served} of ${summary.asked}`,
    cost: money(Math.round(summary.cost_minor)),
    price: money(summary.price_minor),
    hours: hoursText(summary.hours),
    mass: massText(summary.mass_kg, system),
    pieces: String(summary.pieces),
    gap: gapText(summary.gap),
    proof: proofText(summary.proof),
  }));
}
