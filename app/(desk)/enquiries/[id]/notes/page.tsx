import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { asking } from '#app/_lib/asking.ts';
import { idOf } from '#app/_lib/respond.ts';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { type EnquiryLifeView, openEnquiryLife } from '#lib/services/enquiries/open-enquiry-life.ts';
import { AboutForm } from './about-form.client.tsx';
import { FileList } from './file-list.client.tsx';
import { NoteList } from './note-list.client.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Notes & files' };

export default async function NotesPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const context = await asking();
  const life = openEnquiryLife(context, idOf((await params).id));
  const enquiry = openEnquiry(context, idOf((await params).id));
  if (!life.ok || !enquiry.ok) notFound();
  const { id, files, notes } = life.value;
  const lists = enquiry.value.files.map((list) => ({
    id: list.id,
    fileName: list.fileName,
    receivedAt: list.receivedAt,
  }));
  return (
    <div className="columns">
      <div>
        <NoteList enquiryId={id} notes={notes} />
        <Moves moves={life.value.moves} />
      </div>
      <div>
        <AboutForm life={life.value} />
        <FileList enquiryId={id} files={files} lists={lists} />
      </div>
    </div>
  );
}

function Moves({ moves }: Pick<EnquiryLifeView, 'moves'>) {
  return (
    <section className="panel" aria-labelledby="steps">
      <h2 id="steps">Steps</h2>
      {moves.length === 0 && <p className="soft">It stands where it was opened.</p>}
      <ul>
        {moves.map((move) => (
          <li key={move.id}>
            {move.from_state} → {move.to_state}
            {move.why !== '' && `: ${move.why}`}{' '}
            <small>
              {move.who}, <ShownMoment at={move.at} />
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}
