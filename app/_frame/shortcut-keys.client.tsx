'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { matchShortcut, SHEET_KEYS, SHORTCUTS, type ShortcutDeed } from './shortcuts.ts';

const KEPT_AS = 'kitwright-keys';
/** A second key that comes later than this begins anew. */
const PATIENCE_MS = 1500;
const GROUPS = ['Anywhere', 'Go to', 'In an enquiry'] as const;

/** Obeys the keys of the house while nobody types, and lists them; who does not want them switches them off. */
export function ShortcutKeys() {
  const router = useRouter();
  const list = useRef<HTMLDialogElement>(null);
  const pressed = useRef<{ keys: readonly string[]; at: number }>({ keys: [], at: 0 });
  const [isOn, setOn] = useState(true);

  useEffect(() => setOn(localStorage.getItem(KEPT_AS) !== 'off'), []);

  useEffect(() => {
    if (!isOn) return;
    function onKeyDown(event: KeyboardEvent): void {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTaken(event.target)) return;
      const recent = event.timeStamp - pressed.current.at < PATIENCE_MS ? pressed.current.keys : [];
      const together = matchShortcut([...recent, event.key]);
      const alone = together.kind === 'none' ? matchShortcut([event.key]) : together;
      const keys = together.kind === 'none' ? [event.key] : [...recent, event.key];
      pressed.current = { keys: alone.kind === 'begun' ? keys : [], at: event.timeStamp };
      if (
        alone.kind === 'found' &&
        carryOut(alone.shortcut.deed, { go: router.push, show: () => list.current?.showModal() })
      )
        event.preventDefault();
    }
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [isOn, router]);

  function turn(on: boolean): void {
    localStorage.setItem(KEPT_AS, on ? 'on' : 'off');
    setOn(on);
  }

  return (
    <>
      <button type="button" className="quiet small wide-only" onClick={() => list.current?.showModal()}>
        Keys
      </button>
      <dialog ref={list} aria-labelledby="keys-title">
        <h2 id="keys-title">Keys</h2>
        <label className="check">
          <input type="checkbox" checked={isOn} onChange={(event) => turn(event.target.checked)} /> Single keys do what
          is listed here
        </label>
        <KeyList />
        <form method="dialog" className="acts">
          <button type="submit" className="main">
            Close
          </button>
        </form>
      </dialog>
    </>
  );
}

function KeyList() {
  return (
    <>
      {GROUPS.map((group) => (
        <section key={group}>
          <h3>{group}</h3>
          <dl className="keys">
            {SHORTCUTS.filter((shortcut) => shortcut.group === group).map(({ keys, label }) => (
              <div key={label}>
                <dt>
                  {keys.map((key, at) => (
                    <span key={key}>
                      {at > 0 && ' then '}
                      <kbd>{key}</kbd>
                    </span>
                  ))}
                </dt>
                <dd>{label}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      <h3>In the schedule’s sheet</h3>
      <dl className="keys">
        {SHEET_KEYS.map(({ keys, label }) => (
          <div key={label}>
            <dt>{keys}</dt>
            <dd>{label}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** Whoever types, chooses or walks a sheet keeps every key; so does an open dialog. */
function isTaken(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target.closest('[role="grid"], [role="textbox"], dialog[open], [popover]'))
    return true;
  return target.matches('input, textarea, select');
}

interface Ways {
  readonly go: (href: string) => void;
  readonly show: () => void;
}

/** Answers whether there was something to do. */
function carryOut(deed: ShortcutDeed, { go, show }: Ways): boolean {
  switch (deed.kind) {
    case 'go':
      go(deed.href);
      return true;
    case 'list':
      show();
      return true;
    case 'tab':
      return pressFirst(`nav.tabs a:nth-child(${deed.number})`);
    case 'press':
      return pressFirst(`[data-shortcut="${deed.mark}"]:not(:disabled)`);
    case 'search': {
      const fields = document.querySelectorAll<HTMLElement>('input[type="search"], [data-shortcut="search"]');
      const field = [...fields].find((one) => one.checkVisibility());
      field?.focus();
      return field !== undefined;
    }
  }
}

function pressFirst(selector: string): boolean {
  const element = [...document.querySelectorAll<HTMLElement>(selector)].find((one) => one.checkVisibility());
  element?.click();
  return element !== undefined;
}
