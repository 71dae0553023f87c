import { countText, dateText } from '#lib/documents/words/print-values.ts';
import { canBeTaken } from '#lib/services/lines/adopt-case.ts';
import type { StudyView } from '#lib/services/plans/study-enquiry.ts';
import type { Money } from './money-text.ts';
import type { Way } from './plan-ways.client.tsx';

type Case = StudyView['cases'][number];

/** Ways that serve more than the plan as it is, or as much for less; told with what they serve and cost. */
export function tellWays(
  cases: StudyView['cases'],
  { money, fittingNothing }: { readonly money: Money; readonly fittingNothing: number },
): readonly Way[] {
  const base = cases.find(({ key }) => key === 'as planned');
  if (base === undefined) return [];
  return cases
    .filter((one) => one !== base && (one.served > base.served || isCheaper(one, base)))
    .sort((a, b) => b.served - a.served || a.cost_minor - b.cost_minor)
    .map((one) => {
      const terms = termsOf(one);
      const more = Math.round(one.cost_minor - base.cost_minor);
      const differs = `${money(Math.abs(more))} ${more < 0 ? 'less' : 'more'} than now`;
      return {
        key: one.key,
        sentence: `${terms.says}: ${one.served} of ${countText(one.asked + fittingNothing, 'valve')} (now ${base.served}), equipment and time ${money(Math.round(one.cost_minor))}, ${differs}.`,
        action: canBeTaken(one.change) ? terms.does : '',
      };
    });
}

function isCheaper(one: Case, base: Case): boolean {
  return one.served === base.served && Math.round(one.cost_minor) < Math.round(base.cost_minor);
}

function termsOf({ change, key }: Case): { readonly says: string; readonly does: string } {
  const { days, crews, startsOn, again } = change;
  if (days !== undefined) return { says: `With ${countText(days, 'day')}`, does: `Ask for ${countText(days, 'day')}` };
  if (crews !== undefined)
    return { says: `With ${countText(crews, 'crew')}`, does: `Ask for ${countText(crews, 'crew')}` };
  if (startsOn !== undefined)
    return { says: `Starting on ${dateText(startsOn)}`, does: `Start on ${dateText(startsOn)}` };
  if (again !== undefined) return { says: `With ${again.join(', ')} again`, does: `Use ${again.join(', ')} again` };
  return { says: key === 'more pieces' ? 'With the pieces that are short, bought or hired in' : key, does: '' };
}

/** By part: what the plan would lose or cost more without it. */
export function tellWithout(cases: StudyView['cases'], money: Money): ReadonlyMap<string, string> {
  const base = cases.find(({ key }) => key === 'as planned');
  if (base === undefined) return new Map();
  return new Map(
    cases
      .filter((one) => one !== base)
      .map((one) => {
        const lost = base.served - one.served;
        const more = Math.round(one.cost_minor - base.cost_minor);
        const tags = one.short.filter((tag) => !base.short.includes(tag));
        const named = `${tags.slice(0, 4).join(', ')}${tags.length > 4 ? ` and ${tags.length - 4} more` : ''}`;
        const told =
          lost > 0
            ? `Without it ${countText(lost, 'valve')} would be lost: ${named}.`
            : more === 0
              ? 'Without it nothing would be lost, and it would cost the same.'
              : `Without it nothing would be lost; ${money(Math.abs(more))} ${more < 0 ? 'less' : 'more'}.`;
        return [one.key, `${told}${one.proof === 'proven' ? '' : ' (not proven)'}`] as const;
      }),
  );
}
