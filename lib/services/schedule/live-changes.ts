/*
 * Lets open screens follow an enquiry: wakes them when something changed, and says who else has it open.
 * Invariant: what a screen is told is read from the database, so that changes made by another process are told too, only later.
 * Not here: what changed (read-changes.ts).
 * Read next: read-changes.ts.
 */
interface Watcher {
  readonly enquiryId: number;
  readonly screen: string;
  readonly who: string;
  readonly wake: () => void;
}

declare global {
  var kitwrightWatchers: Set<Watcher> | undefined;
}

/** Wakes every screen that has the enquiry open. */
export function announceChange(enquiryId: number): void {
  for (const watcher of watchers()) if (watcher.enquiryId === enquiryId) watcher.wake();
}

/** From now on the watcher is woken; the answer ends that. */
export function watchEnquiry(watcher: Watcher): () => void {
  watchers().add(watcher);
  announceChange(watcher.enquiryId);
  return () => {
    watchers().delete(watcher);
    announceChange(watcher.enquiryId);
  };
}

/** Names of the others who have the enquiry open, each once. */
export function othersPresent(of: { readonly enquiryId: number; readonly screen: string }): readonly string[] {
  const others = [...watchers()].filter(({ enquiryId, screen }) => enquiryId === of.enquiryId && screen !== of.screen);
  return [...new Set(others.map(({ who }) => who))].toSorted();
}

function watchers(): Set<Watcher> {
  globalThis.kitwrightWatchers ??= new Set();
  return globalThis.kitwrightWatchers;
}
