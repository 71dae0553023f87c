/*
 * The field guide as a whole: every field that a list or a site can give.
 * Invariant: a field has one entry; a test holds the list against the columns of intake and the site's contract.
 * Not here: labels and short help of columns (lib/services/lines/field-guide.ts joins them).
 * Read next: field-guide-entry.ts.
 */
import { DRIVE_GUIDE } from './field-guide-drive.ts';
import type { GuideEntry } from './field-guide-entry.ts';
import { PLACE_GUIDE } from './field-guide-place.ts';
import { STEM_GUIDE } from './field-guide-stem.ts';
import { TORQUE_GUIDE } from './field-guide-torque.ts';
import { VALVE_GUIDE } from './field-guide-valve.ts';

export const COLUMN_GUIDE: readonly GuideEntry[] = [
  ...VALVE_GUIDE,
  ...STEM_GUIDE,
  ...TORQUE_GUIDE,
  ...DRIVE_GUIDE,
  ...PLACE_GUIDE,
];
