import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { type ShownTexts, shownTexts } from '#app/_lib/person-forms.ts';
import { idOf } from '#app/_lib/respond.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { CrewDays } from '#app/_ui/plan/crew-days.tsx';
import { PlanEffort } from '#app/_ui/plan/plan-effort.tsx';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { RepairDone } from '#app/(desk)/enquiries/[id]/_why/repair-done.client.tsx';
import { countText, hoursText, massText } from '#lib/documents/words/print-values.ts';
import type { Context } from '#lib/services/context.ts';
import { type EnquiryView, openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { listModelsView } from '#lib/services/equipment/list-models-view.ts';
import { type PlanView, readPlanView } from '#lib/services/plans/plan-view.ts';
import { HOME_DEPOT_ALONE } from '#lib/services/plans/study-cases.ts';
import { readStudy, type StudyKind, type StudyView } from '#lib/services/plans/study-enquiry.ts';
import { type ShortageAnswer, shortageAnswer } from '#lib/services/stock/shortage-answer.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { FrontierChart } from './frontier-chart.client.tsx';
import { frontierRows } from './frontier-rows.ts';
import { groupLines, groupRefusals } from './group-plan.ts';
import { type Money, moneyText } from './money-text.ts';
import { OtherDepots } from './other-depots.tsx';
import { PlanCoverage } from './plan-coverage.tsx';
import { PlanKits } from './plan-kits.client.tsx';
import { PlanLines, PlanRefusals } from './plan-lines.client.tsx';
import { PlanPreferences } from './plan-preferences.client.tsx';
import { PlanRun } from './plan-run.client.tsx';
import { PlanWays } from './plan-ways.client.tsx';
import { preferenceRows, sinceBefore } from './preference-rows.ts';
import { ShortOf } from './short-of.tsx';
import { StudyRun } from './study-run.client.tsx';
import { tellWays, tellWithout } from './tell-cases.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Kits' };

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
        <PlanKits
          {...{ enquiryId, version, names }}
          choices={constraints}
          roles={ROLES}
          partRoles={{}}
          tags={[]}
          kits={[]}
        />
      ) : (
        <Planned
          enquiry={enquiry.value}
          view={view.value}
          names={names}
          texts={await shownTexts()}
          roles={Object.fromEntries((models.ok ? models.value : []).map((model) => [model.number, model.role]))}
          system={await unitSystem()}
          study={(kind) => studyOf(house, { enquiryId, kind })}
          shortage={shortageOf(house, { enquiryId, preference: view.value.shown })}
        />
      )}
    </div>
  );
}

function shortageOf(
  house: Context,
  asked: { readonly enquiryId: number; readonly preference: PlanView['shown'] },
): ShortageAnswer | null {
  const answer = shortageAnswer(house, asked);
  return answer.ok ? answer.value : null;
}

const NO_STUDY: StudyView = { state: { kind: 'none' }, preference: 'cost', cases: [] };

function studyOf(house: Context, key: { readonly enquiryId: number; readonly kind: StudyKind }): StudyView {
  const study = readStudy(house, key);
  return study.ok ? study.value : NO_STUDY;
}

/** Lines that equipment fits and the plan leaves out all the same. */
function leftOver({ lines, unserved }: PlanView): number {
  const refused = new Set(unserved.map((line) => line.tag));
  return lines.filter((line) => line.served < line.asked && !refused.has(line.tag)).length;
}

interface PlannedProps {
  readonly enquiry: EnquiryView;
  readonly view: PlanView;
  readonly names: Readonly<Record<string, string>>;
  readonly roles: Readonly<Record<string, string>>;
  readonly system: UnitSystem;
  readonly texts: ShownTexts;
  readonly study: (kind: StudyKind) => StudyView;
  readonly shortage: ShortageAnswer | null;
}

function Planned({ enquiry, view, names, roles, system, texts, study, shortage }: PlannedProps) {
  const { id: enquiryId, version, constraints } = enquiry;
  const money = moneyText(texts, view.currency);
  const printing = { system, money, priceMoney: moneyText(texts, view.priceCurrency) };
  const withoutStudy = study('without');
  const without = withoutOf(withoutStudy, money);
  const groups = groupLines(view.lines, { names, system });
  const refusals = groupRefusals(view.unserved);
  const left = leftOver(view);
  return (
    <>
      <section className={styles.panel} aria-labelledby="plans">
        <h2 id="plans">Plans side by side</h2>
        <PlanPreferences
          {...{ enquiryId, version }}
          shown={view.shown}
          rows={preferenceRows(view, printing)}
          since={sinceBefore(view, printing)}
        />
      </section>
      <Frontier {...{ enquiry, view, money }} study={study('frontier')} />
      <PlanKits
        {...{ enquiryId, version, names }}
        choices={constraints}
        roles={ROLES}
        partRoles={roles}
        tags={[...view.lines, ...view.unserved].map(({ tag }) => tag)}
        study={<WithoutRun enquiryId={enquiryId} study={withoutStudy} />}
        kits={view.kits.map((kit) => ({
          ...kit,
          items: kit.items.map((item) => ({ ...item, without: without.get(item.number) ?? '' })),
          facts: `${hoursText(kit.hours)} of work · ${massText(kit.mass_kg, system)} · ${countText(kit.pieces, 'piece')}`,
        }))}
      />
      <OtherDepots {...{ enquiry, names }} depots={view.depots} alone={without.get(HOME_DEPOT_ALONE) ?? ''} />
      {shortage === null ? null : <ShortOf answer={shortage} />}
      <Needed {...{ view, names, roles, without }} />
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
        {left > 0 ? <Ways {...{ enquiryId, view, money }} study={study('ways')} /> : null}
      </section>
      <section className={styles.panel}>
        <PlanEffort view={view} />
      </section>
    </>
  );
}

/** What the list would cost in fewer or more days, with other crews. */
function Frontier({
  enquiry,
  view,
  money,
  study,
}: {
  readonly enquiry: EnquiryView;
  readonly view: PlanView;
  readonly money: Money;
  readonly study: StudyView;
}) {
  const { days, crews } = enquiry.site;
  const rows = frontierRows(study, { money, days, crews, fittingNothing: view.fittingNothing });
  return (
    <section className={styles.panel} aria-labelledby="frontier">
      <h2 id="frontier">Cost against days and crews</h2>
      <p className={styles.lead}>
        The plan of least cost for fewer and more days and for other crews, each worked out and checked like the plan
        above.
      </p>
      <StudyRun
        enquiryId={enquiry.id}
        kind="frontier"
        state={study.state}
        words={{ start: 'Work out other days and crews', what: 'plans' }}
      />
      {rows.length === 0 ? null : <FrontierChart key={rows.length} enquiryId={enquiry.id} rows={rows} />}
    </section>
  );
}

interface NeededProps {
  readonly view: PlanView;
  readonly names: Readonly<Record<string, string>>;
  readonly roles: Readonly<Record<string, string>>;
  readonly without: ReadonlyMap<string, string>;
}

/** What each piece is needed for, and what would be lost without it. */
function Needed({ view, names, roles, without }: NeededProps) {
  return (
    <section className={styles.panel} aria-labelledby="needed">
      <h2 id="needed">What each piece is needed for</h2>
      <PlanCoverage coverage={view.coverage} names={names} roles={roles} without={without} />
    </section>
  );
}

/** Works out for every part at once what leaving it out would cost; told beside each. */
function WithoutRun({ enquiryId, study }: { readonly enquiryId: number; readonly study: StudyView }) {
  const isThere = study.state.kind === 'ready' && study.state.current;
  return (
    <section className={styles.panel} aria-labelledby="without">
      <h2 id="without">What each part is worth</h2>
      <p className={styles.lead}>
        {isThere
          ? 'The list was planned anew without each part in turn: what would be lost or cost more stands beside the part below.'
          : 'The list can be planned anew without each part in turn: what would be lost or cost more then stands beside the part below.'}
      </p>
      <StudyRun
        enquiryId={enquiryId}
        kind="without"
        state={study.state}
        words={{ start: 'What would leaving each out cost?', what: 'plans without one piece' }}
      />
    </section>
  );
}

function withoutOf(study: StudyView, money: Money): ReadonlyMap<string, string> {
  const isStale = study.state.kind === 'ready' && !study.state.current;
  return isStale ? new Map() : tellWithout(study.cases, money);
}

interface WaysProps {
  readonly enquiryId: number;
  readonly view: PlanView;
  readonly money: Money;
  readonly study: StudyView;
}

/** What would serve the lines that are short. */
function Ways({ enquiryId, view, money, study }: WaysProps) {
  const ways = tellWays(study.cases, { money, fittingNothing: view.fittingNothing });
  const isOver = study.state.kind === 'ready' && study.state.current;
  return (
    <>
      <h3>Ways to serve more</h3>
      <StudyRun
        enquiryId={enquiryId}
        kind="ways"
        state={study.state}
        words={{ start: 'Look for other days, crews, dates and equipment', what: 'ways' }}
      />
      <PlanWays enquiryId={enquiryId} ways={ways} />
      {isOver && ways.length === 0 ? (
        <p className={styles.soft}>None of the other days, crews, dates and pieces that were tried serves more.</p>
      ) : null}
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
  return `${countText(shortage.valvesMore, 'valve')} more could be served if these pieces were free: ${pieces.join('; ')}. Pieces of all depots are counted.`;
}
