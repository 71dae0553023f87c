/*
 * Sheets of labels for units, bays and boxes of counted pieces, drawn as PDF.
 * Invariant: what a label carries is what a scan field reads (lib/stock/scan-code.ts); reads only.
 * Not here: labels of packed cases, and the drawing (lib/pdf).
 * Read next: ../../documents/labels/label-sheet.ts.
 */
import { listUnits } from '#db/queries/equipment.ts';
import { listBays, listShelves } from '#db/queries/stock.ts';
import { LABELS_A_SHEET, type Label, type LabelSheet } from '#lib/documents/labels/label-sheet.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { bayCode, modelCode } from '#lib/stock/scan-code.ts';
import { drawLabels } from '#lib/workers/draw-paper.ts';

export const LABEL_KINDS = ['unit', 'bay', 'model'] as const;
export type LabelKind = (typeof LABEL_KINDS)[number];

export interface LabelsAsked {
  readonly kind: LabelKind;
  /** Empty takes all depots. */
  readonly depot: string;
  /** Of units: only these; empty takes what the other filters leave. */
  readonly serials: readonly string[];
  /** Of units: one model; of boxes: one model. Empty takes all. */
  readonly model: string;
  readonly bay: string;
  /** Places of the first sheet that are used up. */
  readonly skip: number;
}

export interface PrintedLabels {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** Twenty sheets; whoever relabels the whole yard prints depot by depot. */
const MOST = 20 * LABELS_A_SHEET;

export async function printLabels(context: Context, asked: LabelsAsked): Promise<Result<PrintedLabels>> {
  const sheet = labelSheet(context, asked);
  if (!sheet.ok) return sheet;
  const bytes = await drawLabels(sheet.value);
  return ok({ fileName: `labels-${asked.kind}.pdf`, mime: 'application/pdf', bytes });
}

export function labelSheet(context: Context, asked: LabelsAsked): Result<LabelSheet> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const labels = labelsOf(context, asked);
  if (labels.length === 0)
    return failed({ code: 'no-labels', sentence: 'Nothing in stock answers to that, so there is no label to print.' });
  if (labels.length > MOST)
    return failed({
      code: 'too-many-labels',
      sentence: `That would be ${labels.length} labels, and ${MOST} are printed at a time: choose a depot, a bay or a model.`,
    });
  const house = houseFacts(context).name;
  const skip = Math.min(Math.max(0, asked.skip), LABELS_A_SHEET - 1);
  return ok({ title: `Labels: ${asked.kind}`, fixedAt: today(context), house, skip, labels });
}

function labelsOf(context: Context, asked: LabelsAsked): readonly Label[] {
  switch (asked.kind) {
    case 'unit':
      return unitLabels(context, asked);
    case 'bay':
      return bayLabels(context, asked);
    case 'model':
      return boxLabels(context, asked);
  }
}

function unitLabels(context: Context, { depot, serials, model, bay }: LabelsAsked): readonly Label[] {
  const names = namesOf(context);
  const wanted = new Set(serials);
  return listUnits(context.database.db)
    .filter((unit) => unit.state !== 'lost' && unit.state !== 'retired')
    .filter((unit) => wanted.size === 0 || wanted.has(unit.serial))
    .filter((unit) => depot === '' || unit.depot === depot)
    .filter((unit) => model === '' || unit.model_number === model)
    .filter((unit) => bay === '' || unit.bay === bay)
    .map((unit) => ({
      code: unit.serial,
      headline: unit.serial,
      lines: [names.get(unit.model_number) ?? unit.model_number, `Model ${unit.model_number}`],
      corner: `Unit · ${houseFacts(context).name}`,
    }));
}

function bayLabels(context: Context, { depot, bay }: LabelsAsked): readonly Label[] {
  const depots = new Map(houseFacts(context).depots.map(({ code, name }) => [code, name]));
  return listBays(context.database.db)
    .filter((row) => (depot === '' || row.depot === depot) && (bay === '' || row.code === bay))
    .map((row) => ({
      code: bayCode({ depot: row.depot, bay: row.code }),
      headline: `${row.depot} ${row.code}`,
      lines: [depots.get(row.depot) ?? row.depot, row.note],
      corner: `Bay · ${houseFacts(context).name}`,
    }));
}

function boxLabels(context: Context, { depot, model }: LabelsAsked): readonly Label[] {
  const names = namesOf(context);
  return listShelves(context.database.db)
    .filter((shelf) => (depot === '' || shelf.depot === depot) && (model === '' || shelf.model_number === model))
    .map((shelf) => ({
      code: modelCode(shelf.model_number),
      headline: shelf.model_number,
      lines: [names.get(shelf.model_number) ?? '', `${shelf.depot} ${shelf.bay}`.trim()],
      corner: `Counted pieces · ${houseFacts(context).name}`,
    }));
}

function namesOf(context: Context): ReadonlyMap<string, string> {
  return new Map(knownModels(context).map(({ number, name }) => [number, name]));
}
