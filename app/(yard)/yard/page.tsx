import type { Metadata } from 'next';
import Link from 'next/link';
import { asking } from '#app/_lib/asking.ts';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import { openYard } from '#lib/services/yard/open-yard.ts';
import { MovementList } from '../_blocks/movement-list.tsx';
import { PickLinks } from '../_blocks/pick-links.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Yard' };

export default async function YardPage() {
  const yard = openYard(await asking());
  if (!yard.ok) {
    return (
      <>
        <h1>Yard</h1>
        <p className="notice refusal">{yard.reason.sentence}</p>
      </>
    );
  }
  const { today, outs, backs, ahead } = yard.value;
  return (
    <>
      <div className="heading">
        <h1>Today in the yard</h1>
        <small>
          <ShownDate on={today} />
        </small>
      </div>
      <p className="tools">
        <Link className={outs.length > 0 ? 'button main' : 'button'} href="/yard/walk">
          {outs.length > 0 ? 'Pick all of today in one walk' : 'Walk of another day'}
        </Link>
      </p>
      <div className="yard-cards">
        <div className="columns">
          <MovementList
            title="Out today"
            rows={outs}
            empty="Nothing leaves today."
            day={({ startsOn, late }) => ({ label: late ? 'was to leave' : 'leaves', on: startsOn })}
            act={(row) => (
              <PickLinks row={row}>
                <Link className="button" href={`/yard/out/${row.booking}`}>
                  Out<span className="unseen"> {row.booking}</span>
                </Link>
              </PickLinks>
            )}
          />
          <MovementList
            title="Back today"
            rows={backs}
            empty="Nothing is to come back today."
            day={({ endsBefore, late }) => ({ label: late ? 'late since' : 'until', on: endsBefore })}
            act={({ booking }) => (
              <Link className="button" href={`/yard/back/${booking}`}>
                Back<span className="unseen"> {booking}</span>
              </Link>
            )}
          />
        </div>
        <MovementList
          title="Leaves within a week"
          rows={ahead}
          empty="Nothing is booked to leave within a week."
          day={({ startsOn }) => ({ label: 'leaves', on: startsOn })}
          act={(row) => <PickLinks row={row} />}
        />
      </div>
    </>
  );
}
