'use client';

import '../../_blocks/picking.css';
import { PrintButton } from '#app/_ui/print-button.client.tsx';
import { ShownDate } from '#app/_ui/shown-forms.client.tsx';
import type { WalkView } from '#lib/services/yard/picking/open-walk.ts';
import { QueuePanel } from '../../_blocks/queue-panel.client.tsx';
import { SaidLine } from '../../_blocks/said.tsx';
import { ScanField } from '../../_blocks/scan-field.client.tsx';
import { SoundSwitch } from '../../_blocks/sound-switch.client.tsx';
import { useScanQueue } from '../../_blocks/use-scan-queue.client.tsx';
import { WalkCrates } from './walk-crates.tsx';
import { WalkSteps } from './walk-steps.tsx';
import { WalkStops } from './walk-stops.client.tsx';

/** Everything that leaves on a day, picked in one walk: scan, see whose crate it goes into, walk on. */
export function WalkScreen({ view }: { readonly view: WalkView }) {
  const { day, depot, pieces, picked } = view;
  const queue = useScanQueue(`walk ${day}`);
  return (
    <div className="yard-work">
      <div className="heading">
        <h1>
          Walk for <ShownDate on={day} />
        </h1>
        <span className={pieces > 0 && picked === pieces ? 'mark good' : 'mark'}>
          {picked} of {pieces} picked in {depot}
        </span>
        <SoundSwitch isMuted={queue.isMuted} onToggle={queue.toggleSound} />
      </div>
      <WalkSteps view={view} />
      {pieces > 0 && (
        <div className="no-print">
          <ScanField
            label="Scan a piece"
            help="The house finds the booking that it is for, and says into whose crate it goes."
            onScan={(code) => queue.add({ kind: 'walk', code, day })}
          />
          <SaidLine said={queue.said} />
        </div>
      )}
      <QueuePanel queue={queue} />
      <WalkStops view={view} queue={queue} />
      <WalkCrates view={view} />
      {pieces > 0 && (
        <p className="tools">
          <PrintButton>Print the walk</PrintButton>
        </p>
      )}
    </div>
  );
}
