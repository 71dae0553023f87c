import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { PlanRefused } from '#app/_ui/plan-refused.tsx';
import styles from '#app/_ui/plan-sheet.module.css';
import { ROLE_NAMES } from '#app/_ui/plan-words.ts';
import { massText, moneyText } from '#lib/documents/print-values.ts';
import { listModelsView, type ModelView } from '#lib/services/list-models-view.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { factTexts } from './fact-texts.ts';
import { ModelList } from './model-list.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Equipment' };

export default async function EquipmentPage() {
  const system = await unitSystem();
  const models = listModelsView(await asking());
  if (!models.ok) return <PlanRefused sentence={models.reason.sentence} />;
  const currency = models.value[0]?.currency ?? '';
  const groups = Object.entries(ROLE_NAMES).map(([role, heading]) => ({
    role,
    heading,
    models: models.value.filter((model) => model.role === role).map((model) => rowOf(model, system)),
  }));
  return (
    <div className={styles.page}>
      <div>
        <h1>Equipment</h1>
        <p className={styles.lead}>
          {models.value.length === 0
            ? 'The house has no equipment yet.'
            : `All that the house hires out. Rates are net, in ${currency}; the price takes the cheapest mix of them for the days of hire.`}
        </p>
      </div>
      <ModelList groups={groups} />
    </div>
  );
}

function rowOf(model: ModelView, system: UnitSystem) {
  const money = (amount: number) => moneyText(amount, model.currency);
  return {
    number: model.number,
    name: model.name,
    mass: massText(model.mass_kg, system),
    day: money(model.day_minor),
    week: money(model.week_minor),
    fourWeeks: money(model.four_weeks_minor),
    free: model.madeToOrder ? 'made to order' : String(model.free),
    facts: factTexts(model.facts, system),
  };
}
