import type { ReactNode } from 'react';
import type { SessionView } from '#lib/services/access/list-users.ts';
import { browserName } from './browser-name.ts';
import { ShownMoment } from './shown-forms.client.tsx';

interface SessionTableProps {
  readonly sessions: readonly SessionView[];
  /** The session that looks at this list, if it is among them. */
  readonly own?: string;
  /** What can be done to a session. */
  readonly deed?: (session: SessionView) => ReactNode;
}

/** Browsers that are signed in. */
export function SessionTable({ sessions, own, deed }: SessionTableProps) {
  if (sessions.length === 0) return <p className="empty">No browser is signed in.</p>;
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Browser</th>
            <th className="wide-only">Address</th>
            <th>Since</th>
            <th className="wide-only">Ends at the latest</th>
            {deed && <th>End it</th>}
          </tr>
        </thead>
        <tbody>
          {sessions.map((session) => (
            <tr key={session.id}>
              <td>
                {browserName(session.browser)} {session.id === own && <strong>(this one)</strong>}
              </td>
              <td className="wide-only">{session.address}</td>
              <td>
                <ShownMoment at={session.since} />
              </td>
              <td className="wide-only">
                <ShownMoment at={session.until} />
              </td>
              {deed && <td>{session.id === own ? 'sign out instead' : deed(session)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
