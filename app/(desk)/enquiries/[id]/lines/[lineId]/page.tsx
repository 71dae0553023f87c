import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { LineAssemblies } from '#app/_ui/line/line-assemblies.tsx';
import { LineChance } from '#app/_ui/line/line-chance.tsx';
import { LineBounds, LineDuty } from '#app/_ui/line/line-duty.tsx';
import { LineFindings } from '#app/_ui/line/line-findings.tsx';
import { LineMeasureFirst } from '#app/_ui/line/line-measure-first.tsx';
import { assemblyNames } from '#app/_ui/line/line-parts.ts';
import { LineSettings } from '#app/_ui/line/line-settings.tsx';
import { LineSpread } from '#app/_ui/line/line-spread.client.tsx';
import { LineSteps } from '#app/_ui/line/line-steps.tsx';
import { LineWhy } from '#app/_ui/line/line-why.client.tsx';
import { PlanPicture } from '#app/_ui/plan/plan-picture.tsx';
import { PlanRefused } from '#app/_ui/plan/plan-refused.tsx';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PREFERENCE_NAMES, ROLE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { ShownSentence, ShownSource } from '#app/_ui/shown-units.client.tsx';
import { LineUnserved } from '#app/(desk)/enquiries/[id]/_why/line-unserved.tsx';
import { RepairDone } from '#app/(desk)/enquiries/[id]/_why/repair-done.client.tsx';
import { listModelsView, type ModelView } from '#lib/services/equipment/list-models-view.ts';
import { type LineDetail, openLine } from '#lib/services/lines/open-line.ts';
import { listLineInputs } from '#lib/services/lines/what-if.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { LineVisits } from './line-visits.tsx';
import { WhatIfPanel } from './what-if.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Line' };

/** A longer list of assumptions starts folded. */
const OPEN_UP_TO = 5;

interface LinePageProps {
  readonly params: Promise<{ readonly id: string; readonly lineId: string }>;
}

export default async function LinePage({ params }: LinePageProps) {
  const { id, lineId } = await params;
  const key = { enquiryId: idOf(id), lineId: idOf(lineId) };
  const house = await asking();
  const system = await unitSystem();
  const detail = openLine(house, { ...key, system });
  if (!detail.ok) return <PlanRefused sentence={detail.reason.sentence} />;
  const inputs = listLineInputs(house, key);
  const listed = listModelsView(house);
  const models = listed.ok ? listed.value : [];
  const names = Object.fromEntries(models.map((model) => [model.number, model.name]));
  const { line, duty, ladder, unserved, assemblies } = detail.value;
  const shown = detail.value.planned[0]?.assembly ?? assemblies[0];
  return (
    <div className={styles.page}>
      <LineHead detail={detail.value} enquiryId={key.enquiryId} system={system} />
      <RepairDone enquiryId={key.enquiryId} replan="no" />
      {unserved === null ? null : <LineUnserved {...key} unserved={unserved} />}
      <section className={styles.panel} aria-labelledby="torque">
        <h2 id="torque">Torque</h2>
        <PlanPicture drawing={ladder} id="ladder" />
      </section>
      <LineVisits known={line.known} visits={line.visits} />
      {inputs.ok ? (
        <section className={styles.panel} aria-labelledby="what-if">
          <h2 id="what-if">What if</h2>
          <WhatIfPanel {...key} tag={line.tag} inputs={inputs.value} cells={line.cells} />
        </section>
      ) : null}
      <DriveLines detail={detail.value} names={names} />
      {shown === undefined ? null : (
        <section className={styles.panel} aria-labelledby="settings">
          <h2 id="settings">Settings{detail.value.planned.length === 0 ? ' of the first assembly that fits' : ''}</h2>
          <LineSettings assembly={shown} />
          <LineChance chance={shown.figures.chance} />
        </section>
      )}
      <section className={styles.panel} aria-labelledby="duty">
        <h2 id="duty">Duty</h2>
        <LineDuty duty={duty} />
        <h3>Bounds on the torque</h3>
        <LineBounds duty={duty} />
        <h3>Spread by chance</h3>
        <LineSpread {...key} system={system} />
      </section>
      <section className={styles.panel} aria-labelledby="findings">
        <h2 id="findings">Findings</h2>
        <LineFindings findings={[...duty.findings, ...(shown?.findings ?? [])]} empty="Nothing to report." />
      </section>
      {assemblies.length === 0 ? null : (
        <section className={styles.panel} aria-labelledby="others">
          <h2 id="others">Ways to do it</h2>
          <LineAssemblies detail={detail.value} names={names} />
        </section>
      )}
      <section className={styles.panel} aria-labelledby="why">
        <h2 id="why">Why this part, and why not that one</h2>
        <LineWhy {...key} tag={line.tag} groups={byRole(models)} />
      </section>
      <section className={styles.panel} aria-labelledby="steps">
        <h2 id="steps">Calculation</h2>
        <LineSteps title="Duty of the valve" steps={duty.steps} />
        {shown === undefined ? null : <LineSteps title="Assembly" steps={shown.steps} />}
      </section>
    </div>
  );
}

interface HeadProps {
  readonly detail: LineDetail;
  readonly enquiryId: number;
  readonly system: UnitSystem;
}

interface WalkProps {
  readonly enquiryId: number;
  readonly beside: LineDetail['beside'];
}

/** To the line before, the line after, and back; the first two also by key. */
function LineWalk({ enquiryId, beside: { before, after } }: WalkProps) {
  const lines = `/enquiries/${enquiryId}/lines`;
  return (
    <nav className={styles.row} aria-label="Lines">
      {before !== null && (
        <a href={`${lines}/${before}`} rel="prev" data-shortcut="previous">
          Previous line
        </a>
      )}
      {after !== null && (
        <a href={`${lines}/${after}`} rel="next" data-shortcut="next">
          Next line
        </a>
      )}
      <a href={`/enquiries/${enquiryId}`}>Back to the schedule</a>
    </nav>
  );
}

function LineHead({ detail: { line, duty, beside }, enquiryId, system }: HeadProps) {
  const assumed = assumptionsOf(duty);
  return (
    <section className={styles.panel} aria-labelledby="line">
      <div className={styles.spread}>
        <h2 id="line" className={styles.title}>
          Line {line.tag}
        </h2>
        <LineWalk enquiryId={enquiryId} beside={beside} />
      </div>
      <p>
        {line.qty} {line.qty === 1 ? 'valve' : 'valves'}, row {line.row} of the list. Closes {duty.closes}
        {duty.closes === 'unknown' ? ': try gently by hand first' : ''}.
        {duty.countTurns ? ' Turns must be counted.' : ''}
        {duty.seized ? ' Said to be seized: not planned, the Desk decides.' : ''}
      </p>
      <LineMeasureFirst duty={duty} system={system} />
      {assumed.length === 0 ? null : (
        <details open={assumed.length <= OPEN_UP_TO}>
          <summary>
            {assumed.length} {assumed.length === 1 ? 'value is' : 'values are'} assumed or by rule of thumb
          </summary>
          <ul className={styles.list}>
            {assumed.map((sentence) => (
              <li key={sentence}>
                <ShownSource source={sentence} />
              </li>
            ))}
          </ul>
        </details>
      )}
      {line.problems.length === 0 ? null : (
        <>
          <h3>From reading the list</h3>
          <ul className={styles.list}>
            {line.problems.map((problem) => (
              <li key={`${problem.code} ${problem.column} ${problem.sentence}`}>
                <span className={problem.severity === 'refused' ? styles.refusal : styles.note}>
                  {problem.severity}
                </span>{' '}
                <ShownSentence told={problem} /> {problem.remedy}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** One sentence for every guess that went into the duty; what was worked out from a guess is not told again. */
function assumptionsOf({ steps }: LineDetail['duty']): readonly string[] {
  const worked = new Set(steps.map((step) => step.name.toLowerCase()));
  const guesses = steps
    .flatMap((step) => step.inputs)
    .filter((input) => input.basis === 'assumed' || input.basis === 'rule of thumb')
    .filter((input) => !worked.has(input.name.toLowerCase()) && !input.source.includes('computed from'))
    .map((input) => `${input.name} (${input.basis}): ${input.source}`);
  return [...new Set(guesses)];
}

interface DriveLinesProps {
  readonly detail: LineDetail;
  readonly names: Readonly<Record<string, string>>;
}

function DriveLines({ detail, names }: DriveLinesProps) {
  const ways = new Map<string, { readonly part: LineDetail['planned'][number]; readonly labels: string[] }>();
  for (const part of detail.planned) {
    const label = `${PREFERENCE_NAMES[part.preference]} (crew ${part.crew + 1})`;
    const way = ways.get(part.assembly.id);
    if (way) way.labels.push(label);
    else ways.set(part.assembly.id, { part, labels: [label] });
  }
  return (
    <section className={styles.panel} aria-labelledby="drive-line">
      <h2 id="drive-line">Planned assembly</h2>
      {ways.size === 0 ? (
        <p className={styles.soft}>No plan serves this line yet.</p>
      ) : (
        [...ways.values()].map(({ part, labels }, index) => (
          <details key={part.assembly.id} open={index === 0}>
            <summary>{labels.join(', ')}</summary>
            <p>{assemblyNames(part.assembly, names).join(' · ')}</p>
            <PlanPicture drawing={part.picture} id={`drive-line-${index}`} />
          </details>
        ))
      )}
    </section>
  );
}

function byRole(models: readonly ModelView[]) {
  return Object.entries(ROLE_NAMES).map(([role, heading]) => ({
    heading,
    models: models.filter((model) => model.role === role).map(({ number, name }) => ({ number, name })),
  }));
}
