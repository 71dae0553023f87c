import { asking } from '#app/_lib/asking.ts';
import { file, problem, readBody, respond } from '#app/_lib/respond.ts';
import { csvFileSchema, roleSchema } from '#lib/contracts/equipment-requests.ts';
import type { Role } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { exportCatalogue, previewCatalogue, takeCatalogue } from '#lib/services/equipment/catalogue-csv.ts';

interface RoleParams {
  readonly params: Promise<{ readonly role: string }>;
}

export async function GET(_request: Request, { params }: RoleParams): Promise<Response> {
  const role = roleOf((await params).role);
  if (!role.ok) return problem(role);
  const text = exportCatalogue(await asking(), role.value);
  if (!text.ok) return problem(text);
  const bytes = new TextEncoder().encode(text.value);
  return file({ fileName: `catalogue-${role.value}.csv`, mime: 'text/csv; charset=utf-8', bytes });
}

export async function POST(request: Request, { params }: RoleParams): Promise<Response> {
  const role = roleOf((await params).role);
  if (!role.ok) return problem(role);
  const body = await readBody(request, csvFileSchema);
  if (!body.ok) return problem(body);
  const context = await asking();
  const { text, seen } = body.value;
  if (seen === undefined) return respond(previewCatalogue(context, { role: role.value, text }));
  return respond(takeCatalogue(context, { role: role.value, text, seen }));
}

function roleOf(name: string): Result<Role> {
  const role = roleSchema.safeParse(name);
  if (role.success) return ok(role.data);
  return failed({ code: 'no-such-role', sentence: `There is no role ${name}: choose one from the list.` });
}
