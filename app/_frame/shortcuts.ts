/** One list of all keys of the house: what each does, shown under `?` and obeyed by shortcut-keys.client.tsx. */
export type ShortcutDeed =
  | { readonly kind: 'go'; readonly href: string }
  /** Opens the tab of the enquiry one is in. */
  | { readonly kind: 'tab'; readonly number: number }
  /** Presses or focuses the first visible element that says `data-shortcut="…"`. */
  | { readonly kind: 'press'; readonly mark: string }
  | { readonly kind: 'search' }
  | { readonly kind: 'list' };

export interface Shortcut {
  /** Pressed one after the other; no key is held down with another, so neither browser nor screen reader is in the way. */
  readonly keys: readonly string[];
  readonly label: string;
  readonly group: 'Anywhere' | 'Go to' | 'In an enquiry';
  readonly deed: ShortcutDeed;
}

export const SHORTCUTS: readonly Shortcut[] = [
  { keys: ['?'], label: 'Show these keys', group: 'Anywhere', deed: { kind: 'list' } },
  { keys: ['/'], label: 'Search', group: 'Anywhere', deed: { kind: 'search' } },
  { keys: ['n'], label: 'New enquiry', group: 'Anywhere', deed: { kind: 'go', href: '/enquiries/new' } },
  { keys: ['g', 'h'], label: 'Home', group: 'Go to', deed: { kind: 'go', href: '/' } },
  { keys: ['g', 'e'], label: 'Enquiries', group: 'Go to', deed: { kind: 'go', href: '/enquiries' } },
  { keys: ['g', 'c'], label: 'Customers', group: 'Go to', deed: { kind: 'go', href: '/customers' } },
  { keys: ['g', 'y'], label: 'Yard', group: 'Go to', deed: { kind: 'go', href: '/yard' } },
  { keys: ['g', 'q'], label: 'Equipment', group: 'Go to', deed: { kind: 'go', href: '/equipment' } },
  { keys: ['g', 'r'], label: 'Rules', group: 'Go to', deed: { kind: 'go', href: '/rules' } },
  { keys: ['g', 'o'], label: 'House', group: 'Go to', deed: { kind: 'go', href: '/house' } },
  { keys: ['g', 'm'], label: 'Measuring', group: 'Go to', deed: { kind: 'go', href: '/help' } },
  ...[1, 2, 3, 4, 5, 6].map(
    (number): Shortcut => ({
      keys: [String(number)],
      label: `Tab ${number} of the enquiry`,
      group: 'In an enquiry',
      deed: { kind: 'tab', number },
    }),
  ),
  { keys: ['j'], label: 'Next line', group: 'In an enquiry', deed: { kind: 'press', mark: 'next' } },
  { keys: ['k'], label: 'Previous line', group: 'In an enquiry', deed: { kind: 'press', mark: 'previous' } },
  { keys: ['p'], label: 'Start planning', group: 'In an enquiry', deed: { kind: 'press', mark: 'plan' } },
];

/** Keys that belong to the schedule's sheet and are obeyed there, also when the others are switched off. */
export const SHEET_KEYS: readonly { readonly keys: string; readonly label: string }[] = [
  { keys: 'Ctrl + Z', label: 'Undo' },
  { keys: 'Ctrl + Y', label: 'Redo' },
  { keys: 'Arrows, Page Up, Page Down, Home, End', label: 'Walk through the cells; with Shift, take a block' },
  { keys: 'F2', label: 'Walk inside the text of a cell; Escape brings the text back' },
  { keys: 'Ctrl + C, Ctrl + X, Ctrl + V', label: 'Copy, cut and paste a block' },
  { keys: 'Ctrl + D', label: 'Fill the block down from its first row' },
  { keys: 'Ctrl + Enter', label: 'Write what is typed into the whole block' },
  { keys: 'Delete', label: 'Empty the block' },
  { keys: 'Ctrl + A', label: 'Take all cells' },
  { keys: 'Shift + Space', label: 'Choose the lines of the block' },
  { keys: 'Alt + Up, Alt + Down', label: 'Move the lines of the block' },
  { keys: 'Ctrl + F', label: 'Find and replace' },
  { keys: 'Ctrl + G', label: 'Go to a line' },
];

export type Matched =
  | { readonly kind: 'none' }
  /** The keys so far begin a longer shortcut. */
  | { readonly kind: 'begun' }
  | { readonly kind: 'found'; readonly shortcut: Shortcut };

export function matchShortcut(pressed: readonly string[]): Matched {
  const begins = SHORTCUTS.filter(({ keys }) => pressed.every((key, at) => keys[at] === key));
  const whole = begins.find(({ keys }) => keys.length === pressed.length);
  if (whole) return { kind: 'found', shortcut: whole };
  return begins.length > 0 && pressed.length > 0 ? { kind: 'begun' } : { kind: 'none' };
}
