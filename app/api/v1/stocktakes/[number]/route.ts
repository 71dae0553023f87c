import { asking } from '#app/_lib/asking.ts';
import { problem, readBody, respond } from '#app/_lib/respond.ts';
import { stocktakeActSchema } from '#lib/contracts/stock-requests.ts';
import { closeStocktake } from '#lib/services/stock/close-stocktake.ts';
import { giveUpStocktake } from '#lib/services/stock/open-stocktake.ts';
import { countStocktake, scanStocktake, unscanStocktake } from '#lib/services/stock/scan-stocktake.ts';

interface StocktakeParams {
  readonly params: Promise<{ readonly number: string }>;
}

export async function POST(request: Request, { params }: StocktakeParams): Promise<Response> {
  const context = await asking();
  const body = await readBody(request, stocktakeActSchema);
  if (!body.ok) return problem(body);
  const { number } = await params;
  switch (body.value.act) {
    case 'scan':
      return respond(scanStocktake(context, { number, ...body.value }));
    case 'count':
      return respond(countStocktake(context, { number, ...body.value }));
    case 'unscan':
      return respond(unscanStocktake(context, { number, ...body.value }));
    case 'give up':
      return respond(giveUpStocktake(context, number));
    case 'close':
      return respond(closeStocktake(context, { number, ...body.value }));
  }
}
