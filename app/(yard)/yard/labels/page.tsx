import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { type LabelChoices, labelChoices } from '#lib/services/stock/label-choices.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Labels' };

export default async function LabelsPage() {
  const choices = labelChoices(await asking());
  if (!choices.ok) {
    return (
      <>
        <h1>Labels</h1>
        <p className="notice refusal">{choices.reason.sentence}</p>
      </>
    );
  }
  const { places } = choices.value;
  return (
    <>
      <h1>Labels to print</h1>
      <p>
        A sheet is A4 with {places} labels of 70 by 36 mm. Print it at its full size, not fitted to the page. Each label
        carries its code as bars and as a square; any reader takes either.
      </p>
      <LabelForm choices={choices.value} />
    </>
  );
}

function LabelForm({ choices: { depots, models, bays, places } }: { readonly choices: LabelChoices }) {
  return (
    <form className="panel" action="/api/v1/labels" method="get" target="_blank" rel="noopener">
      <div className="fields">
        <div>
          <label htmlFor="kind">Labels for</label>
          <select id="kind" name="kind">
            <option value="unit">units</option>
            <option value="bay">bays</option>
            <option value="model">boxes of counted pieces</option>
          </select>
        </div>
        <div>
          <label htmlFor="depot">Depot</label>
          <select id="depot" name="depot">
            <option value="">all</option>
            {depots.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="model">Model</label>
          <select id="model" name="model">
            <option value="">all</option>
            {models.map(({ number, name }) => (
              <option key={number} value={number}>
                {number} {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="bay">Bay</label>
          <select id="bay" name="bay">
            <option value="">all</option>
            {bays.map((code) => (
              <option key={code}>{code}</option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="skip">Labels already used of the first sheet</label>
          <input id="skip" name="skip" type="number" inputMode="numeric" min={0} max={places - 1} defaultValue={0} />
        </div>
      </div>
      <p>
        <button type="submit" className="main">
          Open the sheets
        </button>
      </p>
    </form>
  );
}
