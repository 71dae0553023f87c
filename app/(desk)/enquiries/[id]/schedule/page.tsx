import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { PrintButton } from '#app/_ui/print-button.client.tsx';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { BASIS_LEGEND, BASIS_MARKS } from '#lib/documents/words/print-values.ts';
import type { LineView } from '#lib/services/lines/line-view.ts';
import { listAllLines } from '#lib/services/schedule/list-lines.ts';
import { formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Schedule for print' };

/** Every line of the schedule in one plain table, for paper; the working table draws only what is in sight. */
export default async function SchedulePrintPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const enquiryId = idOf((await params).id);
  const listed = listAllLines(await asking(), enquiryId);
  if (!listed.ok) notFound();
  const lines = listed.value;
  const system = await unitSystem();
  return (
    <section aria-labelledby="whole-schedule">
      <h2 id="whole-schedule">Schedule, {lines.length === 1 ? '1 line' : `${lines.length} lines`}</h2>
      <p className="soft">
        Torques and turns at the wheel or nut, the worse direction; estimates until measured. {BASIS_LEGEND}
      </p>
      <p className="tools">
        <PrintButton>Print</PrintButton>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard */}
      <div className="wide" role="region" aria-label="All lines" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th>Tag</th>
              <th className="number">Qty</th>
              <th>Valve</th>
              <th>Driven by</th>
              <th className="number">To start</th>
              <th className="number">To run</th>
              <th className="number">Turns</th>
              <th className="number">Never above</th>
              <th>To settle</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <PrintedLine key={line.id} line={line} system={system} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function PrintedLine({ line, system }: { readonly line: LineView; readonly system: UnitSystem }) {
  const { cells, duty } = line;
  const told = (known: Known<Unit>) => `${formatRange(known, system)} ${BASIS_MARKS[known.basis]}`;
  const settle = [
    ...line.problems.filter(({ severity }) => severity !== 'note').map((told) => sentenceIn(told, system)),
    ...duty.findings.filter(({ severity }) => severity !== 'note').map((told) => sentenceIn(told, system)),
  ];
  return (
    <tr>
      <td>{line.tag}</td>
      <td className="number">{line.qty}</td>
      <td>{[cells.valve_type, cells.size].filter(Boolean).join(', ')}</td>
      <td>{cells.driven_by ?? ''}</td>
      {[duty.starting, duty.running, duty.turns, duty.neverExceed].map((known, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the four columns of a row never change places
        <td key={index} className="number">
          <ShownWords>{told(known)}</ShownWords>
        </td>
      ))}
      <td>
        <ShownWords>{settle.join(' ')}</ShownWords>
      </td>
    </tr>
  );
}
