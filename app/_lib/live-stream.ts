import type { Context } from '#lib/services/context.ts';
import { watchEnquiry } from '#lib/services/schedule/live-changes.ts';
import { type ChangesView, readChanges } from '#lib/services/schedule/read-changes.ts';

interface Following {
  readonly enquiryId: number;
  /** The newest change that the screen knows. */
  readonly after: number;
  readonly signal: AbortSignal;
}

/** Changes made by another process wake nobody here: they are looked for. */
const LOOK_MS = 2000;
/** A browser comes back by itself, and shows anew who it is. */
const LONGEST_MS = 10 * 60_000;

/** Writes what changed whenever something did, until the screen goes away. */
export function liveStream(context: Context, { enquiryId, after, signal }: Following): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let last = after;
  let told = '';
  let stop = (): void => undefined;
  return new ReadableStream<Uint8Array>({
    start(controller) {
      let isOpen = true;
      let leave = (): void => undefined;
      function look(): void {
        if (!isOpen) return;
        const found = readChanges(context, { enquiryId, after: last });
        if (!found.ok) {
          stop();
          return;
        }
        const others = found.value.others.join('\n');
        if (found.value.changes.length === 0 && others === told) return;
        last = found.value.last;
        told = others;
        controller.enqueue(encoder.encode(eventOf(found.value)));
      }
      stop = () => {
        if (!isOpen) return;
        isOpen = false;
        clearInterval(looking);
        clearTimeout(ending);
        leave();
        controller.close();
      };
      const looking = setInterval(look, LOOK_MS);
      const ending = setTimeout(stop, LONGEST_MS);
      controller.enqueue(
        encoder.encode(`retry: 1500\nid: ${last}\ndata: {"last":${last},"changes":[],"others":[]}\n\n`),
      );
      leave = watchEnquiry({ enquiryId, screen: context.screen ?? '', who: context.actor.name, wake: look });
      signal.addEventListener('abort', stop);
    },
    cancel() {
      stop();
    },
  });
}

function eventOf(view: ChangesView): string {
  return `id: ${view.last}\ndata: ${JSON.stringify(view)}\n\n`;
}
