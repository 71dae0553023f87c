import type { Clash } from '#lib/services/schedule/change-answer.ts';
import { readKept, writeKept } from './kept-jobs.ts';
import { doJob, type Job, type JobDone, type Work } from './schedule-jobs.ts';

export interface Refusal {
  readonly job: Job;
  readonly sentence: string;
}

export interface SavingState {
  readonly jobs: readonly Job[];
  /** Why saving fails at present; it is tried again by itself. */
  readonly trouble: string;
  readonly refused: readonly Refusal[];
  readonly clashes: readonly Clash[];
  readonly past: readonly (readonly number[])[];
  readonly future: readonly (readonly number[])[];
}

export interface SavingStore {
  readonly state: () => SavingState;
  /** Calls back after every change of the state, and with what was done. */
  readonly follow: (listener: Listener) => () => void;
  readonly take: (work: readonly Work[]) => void;
  readonly step: (way: 'undo' | 'redo') => void;
  readonly again: (refusal?: Refusal) => void;
  readonly remember: (change: number) => void;
  readonly letGo: (refusal: Refusal) => void;
  readonly settle: (clash: Clash) => void;
}

/** A change that another screen of this window made: the table can take it back as its newest. */
export function rememberChange(enquiryId: number, change: number): void {
  savingStore(enquiryId).remember(change);
}

type Listener = (done?: JobDone) => void;

const stores = new Map<number, SavingStore>();

/** The queue of one enquiry in this window; it goes on saving while other screens are looked at. */
export function savingStore(enquiryId: number): SavingStore {
  const store = stores.get(enquiryId) ?? openStore(enquiryId);
  stores.set(enquiryId, store);
  return store;
}

/** Waits before a failed save is tried again; the last one for ever after. */
const WAITS_MS = [1000, 3000, 8000, 20_000];

function openStore(enquiryId: number): SavingStore {
  const { get, set, follow } = holdState(enquiryId);
  const { put, work, isBusy } = queueOf({ enquiryId, get, set });
  window.addEventListener('online', () => void work());
  window.addEventListener('beforeunload', (event) => {
    if (get().jobs.length + get().refused.length > 0) event.preventDefault();
  });
  void work();

  function step(way: 'undo' | 'redo'): void {
    const { jobs } = get();
    // What could not be saved yet is taken back without the house.
    if (way === 'undo' && !isBusy() && jobs.length > 0) {
      set({ jobs: jobs.slice(0, -1), ...(jobs.length === 1 ? { trouble: '' } : {}) });
    } else put([{ ...named(), kind: 'undo', changes: [], way }]);
  }

  function letGo(refusal: Refusal): void {
    set({ refused: get().refused.filter((one) => one !== refusal) });
  }

  return {
    ...{ state: get, step, follow, letGo },
    take: (all) => {
      const { group } = named();
      put(all.map((one) => ({ ...named(), ...one, group })));
    },
    again: (refusal) => {
      if (!refusal) void work();
      else {
        letGo(refusal);
        put([refusal.job]);
      }
    },
    remember: (change) => set({ past: [...get().past, [change]], future: [] }),
    settle: (clash) => set({ clashes: get().clashes.filter((one) => one !== clash) }),
  };
}

interface Held {
  readonly get: () => SavingState;
  readonly set: (next: Partial<SavingState>, done?: JobDone) => void;
  readonly follow: SavingStore['follow'];
}

/** The state of the queue, kept in the window beside it, and those who follow it. */
function holdState(enquiryId: number): Held {
  const kept = readKept(enquiryId);
  // What stood first may have reached the house before the window was loaded again; only texts of cells bear sending twice.
  const jobs = kept.jobs.filter((job, index) => index > 0 || job.kind === 'cells');
  let state: SavingState = { ...kept, jobs, trouble: '', refused: [], clashes: [] };
  const listeners = new Set<Listener>();
  return {
    get: () => state,
    set: (next, done) => {
      state = { ...state, ...next };
      writeKept(enquiryId, state);
      for (const listener of listeners) listener(done);
    },
    follow: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Sends what is waiting, one job after the other; texts that got no answer are sent again after a while. */
function queueOf({ enquiryId, get, set }: Pick<Held, 'get' | 'set'> & { readonly enquiryId: number }) {
  const groups = new Map<string, readonly number[]>();
  let busy = false;
  let failures = 0;
  let timer = 0;

  async function work(): Promise<void> {
    if (busy) return;
    busy = true;
    window.clearTimeout(timer);
    for (let job = get().jobs[0]; job; job = get().jobs[0]) {
      const sent = await doJob(`/api/v1/enquiries/${enquiryId}`, withChanges(job, get()));
      if (!sent.ok && !sent.answered && job.kind === 'cells') {
        timer = window.setTimeout(() => void work(), WAITS_MS[Math.min(failures, WAITS_MS.length - 1)]);
        failures += 1;
        set({ trouble: sent.sentence });
        break;
      }
      failures = 0;
      const rest = { jobs: get().jobs.slice(1), trouble: '' };
      if (sent.ok) {
        const clashes = withClashes(get().clashes, sent.value.clashes);
        set({ ...rest, clashes, ...remembered(get(), { job, done: sent.value, groups }) }, sent.value);
      } else set({ ...rest, refused: [...get().refused, { job, sentence: sent.sentence }] });
    }
    busy = false;
  }

  function put(more: readonly Job[]): void {
    set({ jobs: [...get().jobs, ...more] });
    void work();
  }

  return { work, put, isBusy: () => busy };
}

/** Which change is taken back is known only when its turn comes: what is being saved before it counts. */
function withChanges(job: Job, { past, future }: SavingState): Job {
  if (job.kind !== 'undo' || job.way === 'any') return job;
  return { ...job, changes: (job.way === 'undo' ? past : future).at(-1) ?? [] };
}

interface Remembering {
  readonly job: Job;
  readonly done: JobDone;
  readonly groups: Map<string, readonly number[]>;
}

/** What can be taken back and made again after a job was done. */
function remembered(state: SavingState, { job, done, groups }: Remembering): Pick<SavingState, 'past' | 'future'> {
  const { past, future } = state;
  const { changes } = done;
  if (job.kind === 'undo' && job.way !== 'any') {
    const more = changes.length > 0 ? [changes] : [];
    return job.way === 'undo'
      ? { past: past.slice(0, -1), future: [...future, ...more] }
      : { past: [...past, ...more], future: future.slice(0, -1) };
  }
  if (changes.length === 0) return { past, future };
  const before = groups.get(job.group);
  const all = [...(before ?? []), ...changes];
  groups.set(job.group, all);
  return { past: [...(before ? past.slice(0, -1) : past), all], future: [] };
}

let made = 0;

function named(): { readonly key: string; readonly group: string } {
  made += 1;
  const key = `${Date.now()}-${made}`;
  return { key, group: key };
}

function withClashes(before: readonly Clash[], more: readonly Clash[]): readonly Clash[] {
  const isOther = (old: Clash): boolean =>
    !more.some(({ lineId, column }) => old.lineId === lineId && old.column === column);
  return more.length === 0 ? before : [...before.filter(isOther), ...more];
}
