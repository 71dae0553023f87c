import type { Context } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { granted } from '../granted.ts';

const LIST = 'tag,type,size,driven by,depth\nV1,gate,DN 100,key cap,0.9 m\n';

interface OneValve {
  readonly title?: string;
  readonly customer?: string;
  readonly site: Readonly<Record<string, unknown>>;
}

/** An enquiry whose list of one buried valve was taken and planned; answers its id. */
export async function planOneValve(context: Context, asked: OneValve): Promise<number> {
  const { title = 'One valve', customer = 'Test customer', site } = asked;
  const { id } = granted(createEnquiry(context, { title, customer: { name: customer }, site }));
  const bytes = new TextEncoder().encode(LIST);
  const { fileId, tables } = granted(await receiveList(context, { enquiryId: id, fileName: 'one.csv', bytes }));
  const [table] = tables;
  const mapping = table?.mapping ?? { headerRow: null, columns: [] };
  granted(await takeList(context, { enquiryId: id, fileId, table: table?.name ?? '', mapping, existing: 'keep' }));
  granted(startPlan(context, id));
  granted(await awaitPlan(context, id));
  return id;
}
