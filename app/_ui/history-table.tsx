import type { HistoryEntry } from '#lib/services/access/read-history.ts';
import { ShownMoment } from './shown-forms.client.tsx';

interface HistoryTableProps {
  readonly entries: readonly HistoryEntry[];
  /** Whether each entry says what it is about, or all are about one thing. */
  readonly about: 'one thing' | 'anything';
}

/** Who did what and when, newest first. */
export function HistoryTable({ entries, about }: HistoryTableProps) {
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>When (UTC)</th>
            <th>Who</th>
            <th>What</th>
            {about === 'anything' && <th>To what</th>}
            <th className="wide-only">With</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <tr key={entry.id}>
              <td>
                <ShownMoment at={entry.at} />
              </td>
              <td>{entry.who}</td>
              <td>{entry.action}</td>
              {about === 'anything' && (
                <td>{entry.href === undefined ? entry.subject : <a href={entry.href}>{entry.subject}</a>}</td>
              )}
              <td className="wide-only history-with">
                {entry.details.map(({ label, text }) => (
                  <span key={label}>
                    {label}: {text}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
