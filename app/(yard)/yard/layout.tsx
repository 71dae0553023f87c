import '../_blocks/yard.css';
import type { ReactNode } from 'react';
import { asking } from '#app/_lib/asking.ts';
import { QueueLamp } from '../_blocks/queue-lamp.client.tsx';
import { YardNav } from '../_blocks/yard-nav.client.tsx';

/** Every screen of the yard: its places, then the screen, in sizes for gloves. */
export default async function YardLayout({ children }: { readonly children: ReactNode }) {
  await asking();
  return (
    <div className="yard">
      <YardNav />
      <QueueLamp />
      {children}
    </div>
  );
}
