import { PREFERENCE_NAMES } from '#app/_ui/plan/plan-words.ts';
import { useWords } from '#app/_ui/shown-forms.client.tsx';
import type { PlanState } from '#lib/services/plans/plan-enquiry.ts';
import chart from './frontier.module.css';

type Trail = NonNullable<Extract<PlanState, { kind: 'running' }>['trail']>;

const WIDE = 420;
const HIGH = 90;
const PAD = 8;

/** Best so far and the bound that none can beat, as they came; where they meet the plan is proven. */
export function PlanTrail({ trail }: { readonly trail: Trail }) {
  const words = useWords();
  const now = trail.at(-1);
  if (now === undefined) return null;
  const steps = trail.filter(({ preference }) => preference === now.preference);
  const gap = now.best === 0 ? 0 : Math.max(0, (now.best - now.bound) / Math.abs(now.best));
  const told = words(
    `${PREFERENCE_NAMES[now.preference]}: the best so far can be better by at most ${(gap * 100).toFixed(1)} %.`,
  );
  const lines = linesOf(steps);
  return (
    <figure style={{ margin: 0 }}>
      <svg className={chart.trail} viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={told}>
        <polygon className={chart.between} points={`${lines.best} ${lines.boundBack}`} />
        <polyline className={chart.best} points={lines.best} />
        <polyline className={chart.bound} points={lines.bound} />
      </svg>
      <figcaption>{told} Full line: best so far; broken line: what no plan can beat.</figcaption>
    </figure>
  );
}

function linesOf(steps: Trail) {
  const values = steps.flatMap(({ best, bound }) => [best, ...(Number.isFinite(bound) ? [bound] : [])]);
  const low = Math.min(...values);
  const high = Math.max(...values, low + 1e-9);
  const x = (index: number) => PAD + (index / Math.max(1, steps.length - 1)) * (WIDE - 2 * PAD);
  const y = (value: number) =>
    HIGH - PAD - ((Number.isFinite(value) ? value - low : 0) / (high - low)) * (HIGH - 2 * PAD);
  const line = (pick: (step: Trail[number]) => number) => steps.map((step, index) => `${x(index)},${y(pick(step))}`);
  const bound = line((step) => step.bound);
  return { best: line((step) => step.best).join(' '), bound: bound.join(' '), boundBack: bound.reverse().join(' ') };
}
