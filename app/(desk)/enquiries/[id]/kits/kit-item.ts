import type { PlanView } from '#lib/services/plans/plan-view.ts';

/** A part of a kit, with what leaving it out would cost where that was worked out. */
export type ShownItem = PlanView['kits'][number]['items'][number] & { readonly without: string };

export interface ItemTools {
  readonly locked: readonly string[];
  readonly pins: readonly { readonly tag: string; readonly part: string }[];
  /** Tags of all lines. */
  readonly tags: readonly string[];
  readonly busy: boolean;
  readonly leaveOut: (part: string) => void;
  readonly keep: (part: string) => void;
  readonly pin: (part: string, tags: readonly string[]) => void;
}
