import type { Checks } from './entry.ts';
import { EXPOSURE_CHECKS } from './exposure-checks.ts';
import { GOODS_CHECKS } from './goods-checks.ts';
import { LIFTING_CHECKS } from './lifting-checks.ts';
import { MACHINE_CHECKS } from './machine-checks.ts';
import { PAPER_CHECKS } from './paper-checks.ts';
import { PLACE_CHECKS } from './place-checks.ts';
import { POWER_SCREW_CHECKS } from './power-screw-checks.ts';
import { VALVE_CHECKS } from './valve-checks.ts';

/** Every check, by topic; an id stands in one of them only. */
export const TOPICS: readonly Checks[] = [
  POWER_SCREW_CHECKS,
  VALVE_CHECKS,
  MACHINE_CHECKS,
  PLACE_CHECKS,
  EXPOSURE_CHECKS,
  LIFTING_CHECKS,
  GOODS_CHECKS,
  PAPER_CHECKS,
];

export const CHECKS: Checks = Object.assign({}, ...TOPICS);
