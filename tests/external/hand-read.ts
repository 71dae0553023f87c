import type { IntakeCode } from '#lib/intake/intake-problem.ts';

/** What a careful person reads out of one row, written down before looking at what the program makes of it. */
export interface HandRead {
  /** As the list itself numbers the row. */
  readonly tag: string;
  /** DN, or lowest and highest DN, or nothing; `aside` for what is not a valve to be turned. */
  readonly dn?: number | readonly [number, number];
  readonly type?: string;
  /** Whether the kind is said or only assumed from the purpose. */
  readonly kind?: 'said' | 'assumed';
  readonly outcome: 'line' | 'aside';
  readonly box?: string;
  readonly rating?: string;
  /** What the person would ask about; a row listed twice is left out here. */
  readonly asks?: readonly IntakeCode[];
  readonly because: string;
}
