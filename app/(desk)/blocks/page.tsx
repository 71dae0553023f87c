import type { Metadata } from 'next';
import { asking } from '#app/_lib/asking.ts';
import { LiveBlocks } from './live-blocks.client.tsx';
import { ChartBlocks, EmptyBlocks, TableBlocks } from './shown-blocks.tsx';
import { FieldBlocks, MarkBlocks, NoticeBlocks } from './small-blocks.tsx';
import { TokenBlocks } from './token-blocks.tsx';

export const dynamic = 'force-dynamic';
export const metadata: Metadata = { title: 'Building blocks' };

/** Every building block of the screens with its states; where a screen needs something that is not here, it is added here first. */
export default async function BlocksPage() {
  await asking();
  return (
    <>
      <h1>Building blocks</h1>
      <p>
        A working drawing on the bench: ink and hairlines on a sheet, a graduated rule on the edge of the header, marks
        that are the fuller the surer a thing is, and one amber that only ever asks for attention. Nothing rests on
        colour alone. Values stand in <code>house.css</code>; light and dark follow the machine.
      </p>
      <TokenBlocks />
      <section className="panel" aria-labelledby="blocks-buttons">
        <h2 id="blocks-buttons">Buttons</h2>
        <p>One main act a screen; quiet ones inside rows; one that takes something away says so by its edge.</p>
        <div className="tools">
          <button type="button" className="main">
            Start planning
          </button>
          <button type="button">Add a line</button>
          <button type="button" className="quiet">
            Show the steps
          </button>
          <button type="button" className="danger">
            Remove
          </button>
          <button type="button" className="small">
            Small
          </button>
          <button type="button" disabled>
            Waits for a plan
          </button>
          <button type="button" aria-busy="true">
            Saving
          </button>
        </div>
      </section>
      <FieldBlocks />
      <NoticeBlocks />
      <MarkBlocks />
      <TableBlocks />
      <section className="panel" aria-labelledby="blocks-dialogs">
        <h2 id="blocks-dialogs">Dialog, toast, menu, help</h2>
        <p>Native elements: Escape closes, the focus comes back, nothing traps it.</p>
        <LiveBlocks />
      </section>
      <EmptyBlocks />
      <ChartBlocks />
    </>
  );
}
