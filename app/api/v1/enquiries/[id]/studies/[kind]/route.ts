import { asking } from '#app/_lib/asking.ts';
import { idOf, problem, readBody, respond } from '#app/_lib/respond.ts';
import { adoptedCaseSchema } from '#lib/contracts/requests.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { adoptCase } from '#lib/services/lines/adopt-case.ts';
import { haltStudy, readStudy, STUDY_KINDS, type StudyKind, startStudy } from '#lib/services/plans/study-enquiry.ts';

interface StudyParams {
  readonly params: Promise<{ readonly id: string; readonly kind: string }>;
}

export async function GET(_request: Request, { params }: StudyParams): Promise<Response> {
  const key = keyOf(await params);
  return key.ok ? respond(readStudy(await asking(), key.value)) : problem(key);
}

export async function POST(_request: Request, { params }: StudyParams): Promise<Response> {
  const key = keyOf(await params);
  return key.ok ? respond(startStudy(await asking(), key.value), 202) : problem(key);
}

export async function DELETE(_request: Request, { params }: StudyParams): Promise<Response> {
  const key = keyOf(await params);
  return key.ok ? respond(haltStudy(await asking(), key.value)) : problem(key);
}

/** Takes the terms of one case over. */
export async function PATCH(request: Request, { params }: StudyParams): Promise<Response> {
  const key = keyOf(await params);
  if (!key.ok) return problem(key);
  const body = await readBody(request, adoptedCaseSchema);
  if (!body.ok) return problem(body);
  return respond(adoptCase(await asking(), { ...key.value, ...body.value }));
}

function keyOf({ id, kind }: { readonly id: string; readonly kind: string }): Result<{
  readonly enquiryId: number;
  readonly kind: StudyKind;
}> {
  const known = STUDY_KINDS.find((one) => one === kind);
  if (known === undefined)
    return failed({ code: 'no-such-study', sentence: `“${kind}” is none of ${STUDY_KINDS.join(', ')}.` });
  return ok({ enquiryId: idOf(id), kind: known });
}
