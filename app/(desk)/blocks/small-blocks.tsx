import { KnownMark } from '#app/_ui/line/known-mark.client.tsx';
import { StateMark } from '#app/_ui/state-mark.tsx';
import { BASES, type Basis, known } from '#lib/units/known-value.ts';

const STATES = ['new', 'being worked', 'quoted', 'accepted', 'declined', 'lapsed'] as const;

/** Fields with help, error, and nothing to type into. */
export function FieldBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-fields">
      <h2 id="blocks-fields">Fields</h2>
      <div className="fields">
        <div>
          <label htmlFor="blocks-days">Days</label>
          <input id="blocks-days" defaultValue="5" aria-describedby="blocks-days-help" />
          <small id="blocks-days-help" className="field-help">
            Days of hire, the first included.
          </small>
        </div>
        <div>
          <label htmlFor="blocks-depth">Depth to nut</label>
          <input id="blocks-depth" defaultValue="1,2 ells" aria-invalid="true" aria-describedby="blocks-depth-error" />
          <span id="blocks-depth-error" className="field-error">
            No unit of length: write it like 1.2 m.
          </span>
        </div>
        <div>
          <label htmlFor="blocks-source">Power source</label>
          <select id="blocks-source" defaultValue="battery">
            <option>battery</option>
            <option>air</option>
            <option>petrol</option>
          </select>
        </div>
        <div>
          <label htmlFor="blocks-off">Serial number</label>
          <input id="blocks-off" value="D112-01" disabled readOnly />
        </div>
        <div>
          <label htmlFor="blocks-note">Note</label>
          <textarea id="blocks-note" rows={2} defaultValue="Gland weeps." />
        </div>
        <label className="check">
          <input type="checkbox" defaultChecked /> only lines with problems
        </label>
      </div>
    </section>
  );
}

/** What a rule says, and what the house says. */
export function NoticeBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-notices">
      <h2 id="blocks-notices">Notices</h2>
      <p className="notice refusal">
        <strong>Refusal.</strong> No battery drive is marked for zone 1. Choose an air drive, or have the zone looked
        at.
      </p>
      <p className="notice warning">
        <strong>Warning.</strong> It may not move at the torque that is allowed. Agree on that before hire.
      </p>
      <p className="notice">
        <strong>Note.</strong> The turns come from a rule of thumb; count from the first turn.
      </p>
      <p className="notice good">Saved. The plan was worked out again.</p>
    </section>
  );
}

/** Bases of numbers, states of enquiries, and badges. */
export function MarkBlocks() {
  return (
    <section className="panel" aria-labelledby="blocks-marks">
      <h2 id="blocks-marks">Marks</h2>
      <p>
        A basis has a square mark: the fuller, the better the number is known. Its sentence shows on hover and focus.
      </p>
      <p className="tools">
        {BASES.map((basis, column) => (
          <KnownMark key={basis} known={sample(basis)} cell={{ row: 0, column, label: basis, isStop: true }} />
        ))}
      </p>
      <p>A state is a tank that fills as the enquiry goes on.</p>
      <p className="tools">
        {STATES.map((state) => (
          <StateMark key={state} state={state} />
        ))}
      </p>
      <p className="tools">
        <span className="mark">in 2 days</span>
        <span className="mark good">free</span>
        <span className="mark warning">today</span>
        <span className="mark refusal">refused</span>
      </p>
    </section>
  );
}

function sample(basis: Basis) {
  return known('N·m', { low: 62, nominal: 95, high: 140 }, { basis, source: 'A value that shows the mark.' });
}
