import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { ShownSentence } from '#app/_ui/shown-units.client.tsx';
import type { EnquiryView } from '#lib/services/enquiries/open-enquiry.ts';

interface TakenListsProps {
  readonly enquiryId: number;
  readonly files: EnquiryView['files'];
}

/** Lists taken so far, with what became of every row. */
export function TakenLists({ enquiryId, files }: TakenListsProps) {
  if (files.length === 0) return null;
  return (
    <section>
      <h2>Lists received</h2>
      {files.map((file) => (
        <div className="panel" key={file.id}>
          <p>
            <a href={`/api/v1/enquiries/${enquiryId}/lists/${file.id}`}>{file.fileName}</a>{' '}
            <small>
              received <ShownMoment at={file.receivedAt} />, kept as it came
            </small>
          </p>
          {file.outcome === null ? (
            <p className="soft">Not taken into the schedule.</p>
          ) : (
            <Outcome outcome={file.outcome} />
          )}
        </div>
      ))}
    </section>
  );
}

type Outcome = NonNullable<EnquiryView['files'][number]['outcome']>;

const SHOWN = 200;

/** What became of the rows of one list: the counts, then what was set aside and what is to settle. */
export function Outcome({ outcome }: { readonly outcome: Outcome }) {
  const { counts, setAside, problems } = outcome;
  return (
    <>
      <p>
        {counts.rows} rows: {counts.lines} lines, {counts.setAside} set aside, {counts.refused} refused, {counts.blank}{' '}
        blank.
      </p>
      {setAside.length > 0 && <SetAside rows={setAside} />}
      {problems.length > 0 && <Problems problems={problems} />}
    </>
  );
}

function SetAside({ rows }: { readonly rows: Outcome['setAside'] }) {
  return (
    <details>
      <summary>Rows set aside ({rows.length})</summary>
      <div className="wide">
        <table>
          <thead>
            <tr>
              <th className="number">Row</th>
              <th>Tag</th>
              <th>Why</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, SHOWN).map((row) => (
              <tr key={row.row}>
                <td className="number">{row.row}</td>
                <td>{row.tag}</td>
                <td>{row.reason}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.length > SHOWN && (
        <p className="soft">
          The first {SHOWN} of {rows.length} are shown; the others stand in the list as it came.
        </p>
      )}
    </details>
  );
}

function Problems({ problems }: { readonly problems: Outcome['problems'] }) {
  return (
    <details>
      <summary>Problems and notes ({problems.length})</summary>
      <div className="wide">
        <table>
          <thead>
            <tr>
              <th className="number">Row</th>
              <th>Column</th>
              <th>Kind</th>
              <th>What</th>
              <th>What to do</th>
            </tr>
          </thead>
          <tbody>
            {problems.slice(0, SHOWN).map((problem) => (
              <ProblemView key={`${problem.row} ${problem.column} ${problem.code}`} problem={problem} />
            ))}
          </tbody>
        </table>
      </div>
      {problems.length > SHOWN && (
        <p className="soft">
          The first {SHOWN} of {problems.length} are shown; the lines themselves carry theirs in the schedule.
        </p>
      )}
    </details>
  );
}

const MARKS = { refused: 'mark refusal', doubt: 'mark warning', note: 'mark' } as const;

function ProblemView({ problem }: { readonly problem: Outcome['problems'][number] }) {
  return (
    <tr>
      <td className="number">{problem.row}</td>
      <td>{problem.column}</td>
      <td>
        <span className={MARKS[problem.severity]}>{problem.severity}</span>
      </td>
      <td>
        <ShownSentence told={problem} />
      </td>
      <td>{problem.remedy}</td>
    </tr>
  );
}
