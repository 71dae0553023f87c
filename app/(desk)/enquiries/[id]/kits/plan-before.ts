/** The plan before the shown one among those that differences are shown from. */
export const PLAN_BEFORE = 'before';
