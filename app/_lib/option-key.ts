import { idOf } from './respond.ts';

export interface OptionParams {
  readonly params: Promise<{ readonly id: string; readonly slot: string }>;
}

/** Which option of which enquiry a path names; a slot that is no number names none. */
export async function optionKey(params: OptionParams['params']) {
  const { id, slot } = await params;
  return { enquiryId: idOf(id), slot: /^\d{1,6}$/.test(slot) ? Number(slot) : -1 };
}
