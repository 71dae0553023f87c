import { asking } from '#app/_lib/asking.ts';
import { type EnquiryParams, idOf, readBody, respond } from '#app/_lib/respond.ts';
import { selfServiceDeedSchema } from '#lib/contracts/self-service.ts';
import { answerWish } from '#lib/services/self-service/answer-wish.ts';
import { sendBackOrder, takeOverOrder, withdrawOrderLinks } from '#lib/services/self-service/take-over.ts';

export async function POST(request: Request, { params }: EnquiryParams) {
  const context = await asking();
  const enquiryId = idOf((await params).id);
  const body = await readBody(request, selfServiceDeedSchema);
  if (!body.ok) return respond(body);
  switch (body.value.deed) {
    case 'take-over':
      return respond(takeOverOrder(context, enquiryId));
    case 'send-back':
      return respond(sendBackOrder(context, enquiryId));
    case 'withdraw-links':
      return respond(withdrawOrderLinks(context, enquiryId));
    case 'decline-extension':
      return respond(answerWish(context, { enquiryId, answer: body.value.answer }));
  }
}
