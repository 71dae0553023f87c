import { asking } from '#app/_lib/asking.ts';
import { file, idOf, problem } from '#app/_lib/respond.ts';
import { LABEL_KINDS, printLabels } from '#lib/services/stock/print-labels.ts';

/** `?kind=unit&depot=VEN&model=D-112&serial=D112-01&serial=D112-02&skip=3`; what is left out takes all. */
export async function GET(request: Request): Promise<Response> {
  const { searchParams } = new URL(request.url);
  const text = (key: string) => (searchParams.get(key) ?? '').slice(0, 60);
  const printed = await printLabels(await asking(), {
    kind: LABEL_KINDS.find((kind) => kind === text('kind')) ?? 'unit',
    depot: text('depot'),
    serials: searchParams.getAll('serial').slice(0, 500),
    model: text('model'),
    bay: text('bay').toUpperCase(),
    skip: idOf(text('skip')),
  });
  return printed.ok ? file(printed.value) : problem(printed);
}
