/**
 * Photographs of this device that the house has not taken yet: kept over reloads in the browser's own database, sent after the scans,
 * each under a key of its own, and deleted from the device as soon as the house has them.
 */
import { LIMITS } from '#lib/kernel/limits.ts';
import { askHouse, type Sending } from './ask-house.ts';
import { newKey, tellAnswer } from './scan-queue.ts';

export interface QueuedPhoto {
  readonly key: string;
  readonly booking: string;
  readonly serial: string;
  readonly fileName: string;
  readonly size: number;
  readonly at: number;
  readonly state: 'waiting' | 'refused';
  readonly sentence: string;
}

interface KeptPhoto extends QueuedPhoto {
  readonly type: string;
  readonly bytes: ArrayBuffer;
}

const STORE = 'photos';

/** What a device keeps at most: enough for a lorry of equipment, little enough for an old telephone. */
const MOST = 40;
const MOST_BYTES = 120 * 1024 * 1024;

let known: readonly QueuedPhoto[] = [];
let isRead = false;
const listeners = new Set<() => void>();

export function subscribeToPhotos(listener: () => void): () => void {
  listeners.add(listener);
  readPhotosOnce();
  return () => listeners.delete(listener);
}

/** Reads what an earlier page kept, unless that was done. */
export function readPhotosOnce(): void {
  if (!isRead) void refresh();
}

export function queuedPhotos(): readonly QueuedPhoto[] {
  return known;
}

const NONE: readonly QueuedPhoto[] = [];
export function noPhotos(): readonly QueuedPhoto[] {
  return NONE;
}

interface NewPhoto {
  readonly booking: string;
  readonly serial: string;
  readonly file: File;
}

/** Keeps it on the device; answers with a sentence where it cannot. */
export async function keepPhoto({ booking, serial, file }: NewPhoto): Promise<string | null> {
  if (file.size > LIMITS.photo_bytes)
    return `A photograph may have at most ${LIMITS.photo_bytes / 1024 / 1024} MB; take a smaller one.`;
  await refresh();
  const held = known.reduce((sum, { size }) => sum + size, 0);
  if (known.length >= MOST || held + file.size > MOST_BYTES)
    return `${known.length} photographs wait on this device, and it keeps no more: take this one when they are sent.`;
  try {
    const photo: KeptPhoto = {
      key: newKey(),
      booking,
      serial,
      fileName: file.name,
      size: file.size,
      type: file.type,
      bytes: await file.arrayBuffer(),
      at: Date.now(),
      state: 'waiting',
      sentence: '',
    };
    await inStore('readwrite', (store) => store.put(photo));
    await refresh();
    return null;
  } catch {
    return 'This browser keeps no photographs: take it again when the connection is back.';
  }
}

export async function takeAwayPhoto(key: string): Promise<void> {
  await inStore('readwrite', (store) => store.delete(key)).catch(() => undefined);
  await refresh();
}

/** The oldest first; only called by the one round that sends (send-scans.ts). */
export async function sendPhotos(): Promise<Sending> {
  await refresh();
  for (const { key } of known.filter(({ state }) => state === 'waiting')) {
    if (!navigator.onLine) return 'no connection';
    const photo = await inStore<KeptPhoto | undefined>('readonly', (store) => store.get(key)).catch(() => undefined);
    if (photo === undefined) continue;
    const answer = await askHouse(`/api/v1/yard/bookings/${encodeURIComponent(photo.booking)}/photos`, {
      body: formOf(photo),
    });
    if (typeof answer === 'string') return answer;
    const { state, sentence } = answer;
    if (state === 'sent') await inStore('readwrite', (store) => store.delete(key));
    else await inStore('readwrite', (store) => store.put({ ...photo, state, sentence }));
    tellAnswer({ screen: photo.booking, state, sentence });
    await refresh();
  }
  return 'all sent';
}

function formOf({ key, serial, fileName, type, bytes }: KeptPhoto): FormData {
  const form = new FormData();
  form.set('key', key);
  form.set('serial', serial);
  form.set('file', new File([bytes], fileName, { type }));
  return form;
}

/** Where the browser's database does not open at once, what was known stays, and it is read again later. */
async function refresh(): Promise<void> {
  const kept = await inStore<KeptPhoto[]>('readonly', (store) => store.getAll()).catch(() => undefined);
  isRead = kept !== undefined;
  if (kept === undefined) return;
  known = kept.map(({ bytes: _, type: __, ...shown }) => shown).toSorted((a, b) => a.at - b.at);
  for (const listener of listeners) listener();
}

/** One request in a transaction of its own. */
async function inStore<Value>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<Value>,
): Promise<Value> {
  const db = await opened();
  try {
    return await new Promise<Value>((resolve, reject) => {
      const transaction = db.transaction(STORE, mode);
      const request = ask(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    db.close();
  }
}

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('kitwright.photos', 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'key' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
