/*
 * Colours of the house on paper, by role: black, greys and one accent tone, with a second tone only for what must never happen.
 * Invariant: text roles reach at least 4.5 : 1 against white (WCAG 2.2, 1.4.3).
 * Not here: the screens' light and dark themes (app).
 * Read next: ../drawings/drawing.ts.
 */
import type { PaintRole } from '#lib/documents/drawings/drawing.ts';

export const PAPER_COLOURS: Readonly<Record<PaintRole, string>> = {
  needed: '#23262b',
  window: '#0f6b62',
  capacity: '#5c6470',
  never: '#a3301c',
  axis: '#23262b',
  grid: '#dcdfe3',
  text: '#16181c',
  muted: '#5c6470',
  warning: '#a3301c',
  outline: '#16181c',
  part: '#e8f1ef',
  'part-dark': '#b9d5d0',
  valve: '#eceef0',
  ground: '#8b7f6d',
  accent: '#0f6b62',
  paper: '#ffffff',
};
