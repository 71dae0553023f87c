import { programAsks } from '#app/_lib/program.ts';
import { openApiDocument } from '#lib/contracts/openapi.ts';

/** What programs may ask is no secret: the document is open to whoever wants to write one. */
export async function GET() {
  await programAsks();
  return Response.json(openApiDocument());
}
