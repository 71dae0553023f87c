import type { Metadata } from 'next';
import { askedBySomeone } from '#app/_lib/asking.ts';
import { unitSystem } from '#app/_lib/unit-system.ts';
import { SessionTable } from '#app/_ui/session-table.tsx';
import { PasswordForm } from '#app/choose-password/password-form.client.tsx';
import { listOwnSessions } from '#lib/services/access/list-users.ts';
import { endSessionsWith } from './account-actions.ts';
import { NameForm, PreferencesForm } from './account-forms.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'My account' };

export default async function AccountPage() {
  const { asker, context } = await askedBySomeone();
  const sessions = listOwnSessions(context);
  if (!sessions.ok) return <p className="notice refusal">{sessions.reason.sentence}</p>;
  const { date_form, decimal_mark } = asker.preferences;
  const chosen = { units: await unitSystem(), dates: date_form, decimals: decimal_mark };
  return (
    <div className="account">
      <div className="heading">
        <h1>My account</h1>
        <small>
          {asker.email} · {context.actor.role}
        </small>
      </div>
      <section className="panel" aria-labelledby="shown">
        <h2 id="shown">How figures are shown</h2>
        <PreferencesForm chosen={chosen} />
      </section>
      <section className="panel" aria-labelledby="who">
        <h2 id="who">Who you are</h2>
        <NameForm name={context.actor.name} />
      </section>
      <section aria-labelledby="password">
        <h2 id="password">Password</h2>
        <PasswordForm />
      </section>
      <section aria-labelledby="sessions">
        <h2 id="sessions">Where you are signed in</h2>
        <SessionTable
          sessions={sessions.value}
          own={asker.sessionId}
          deed={(session) => (
            <form action={endSessionsWith}>
              <button type="submit" name="session" value={session.id}>
                End
              </button>
            </form>
          )}
        />
        {sessions.value.length > 1 && (
          <form action={endSessionsWith} className="tools">
            <button type="submit">End all but this one</button>
          </form>
        )}
      </section>
    </div>
  );
}
