/*
 * The papers of a load: case labels, packing list with serial numbers, certificates, site sheets, despatch advice.
 * Invariant: they say what lies in the cases as they are packed, or proposed where nobody has packed yet.
 * Not here: papers as issued with the quote (../../quotes/booked-papers.ts).
 * Read next: open-packing.ts.
 */
import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import type { CaseLabel, CaseLabelSheet } from '#lib/documents/labels/case-label.ts';
import { certificatesPaper } from '#lib/documents/papers/certificates-paper.ts';
import { packingPaper } from '#lib/documents/papers/packing-paper.ts';
import type { CaseInput, CertificateInput } from '#lib/documents/papers/paper-inputs.ts';
import { massText } from '#lib/documents/words/print-values.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { type PapersInput, packingInput, paperOf } from '#lib/services/quotes/papers-of.ts';
import { caseCode } from '#lib/stock/scan-code.ts';
import { drawCaseLabels, drawPaper } from '#lib/workers/draw-paper.ts';
import { bookingNumbered } from '../booking-record.ts';
import { type PickFacts, pickFacts } from '../picking/pick-facts.ts';
import { loadOfBooking } from './load-facts.ts';
import { type CaseView, type PackingView, packingView } from './open-packing.ts';

export const LOAD_PAPERS = ['case-labels', 'packing-list', 'site-sheet', 'certificates', 'despatch-xml'] as const;
export type LoadPaper = (typeof LOAD_PAPERS)[number];

export interface LoadFile {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

export async function loadPaper(
  context: Context,
  { number, kind }: { readonly number: string; readonly kind: LoadPaper },
): Promise<Result<LoadFile>> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const found = bookingNumbered(db, number);
  if (!found.ok) return found;
  const facts = pickFacts(db, { context, booking: found.value });
  const view = packingView({ facts, load: loadOfBooking(db, { context, facts }) });
  // What a crew needs at the valves can be printed again when the load is on its way or back.
  if (kind !== 'site-sheet' && view.cases.length === 0)
    return failed({ code: 'nothing-to-pack', sentence: `${number} holds nothing any more: there is nothing to pack.` });
  if (kind === 'case-labels') {
    const bytes = await drawCaseLabels(labelSheet(context, { facts, view }));
    return ok({ fileName: `${number}-case-labels.pdf`, mime: 'application/pdf', bytes });
  }
  if (facts.papers === null)
    return failed({
      code: 'booking-without-quote',
      sentence: `${number} belongs to no quote: only its case labels are printed.`,
    });
  return ok(await quoted(kind, { context, facts, view, papers: facts.papers }));
}

interface Quoted {
  readonly context: Context;
  readonly facts: PickFacts;
  readonly view: PackingView;
  readonly papers: PapersInput;
}

async function quoted(kind: Exclude<LoadPaper, 'case-labels'>, at: Quoted): Promise<LoadFile> {
  const { number } = at.view;
  const pdf = { mime: 'application/pdf' } as const;
  switch (kind) {
    case 'packing-list':
      return { ...pdf, fileName: `${number}-packing-list.pdf`, bytes: await drawPaper(packingPaper(inputOf(at))) };
    case 'site-sheet':
      return {
        ...pdf,
        fileName: `${number}-site-sheets.pdf`,
        bytes: await drawPaper(paperOf('site-sheet', at.papers)),
      };
    case 'certificates': {
      const { context } = inputOf(at);
      const paper = certificatesPaper({ context, bookingNumber: number, certificates: certificatesOf(at.facts) });
      return { ...pdf, fileName: `${number}-certificates.pdf`, bytes: await drawPaper(paper) };
    }
    case 'despatch-xml': {
      const { booking } = at.facts;
      const orderNumber = booking.order_number === '' ? at.papers.number : booking.order_number;
      const xml = despatchXml({ ...inputOf(at), orderNumber });
      return { mime: 'application/xml', fileName: `${number}-despatch-advice.xml`, bytes: Buffer.from(xml, 'utf8') };
    }
  }
}

function inputOf({ context, facts, view, papers }: Quoted) {
  const depot = houseFacts(context).depots.find(({ code }) => code === facts.booking.depot);
  const input = packingInput({ ...papers, issuedOn: today(context), bookingNumber: facts.booking.number });
  return {
    ...input,
    depot: depot?.name ?? input.depot,
    transport: view.transport,
    cases: view.cases.map(caseInput),
    loadSentence: view.loadSentence,
    certificates: certificatesOf(facts),
  };
}

function caseInput(box: CaseView): CaseInput {
  return {
    number: box.name === 'loose' ? `${box.number} (loose)` : String(box.number),
    crew: box.crew,
    contents: contentsOf(box),
    mass_kg: box.mass_kg,
    lift: box.lift,
    energy_wh: box.energy_wh,
    dangerousGoods: box.goods.map(({ sentence }) => sentence),
  };
}

/** One line a model, in the order in which pieces go in. */
function contentsOf({ contents }: CaseView): CaseInput['contents'] {
  const models = [...new Set(contents.map(({ model }) => model))];
  return models.map((model) => {
    const same = contents.filter((one) => one.model === model);
    return {
      number: model,
      name: same[0]?.name ?? model,
      count: same.reduce((sum, { count }) => sum + count, 0),
      serials: same.flatMap(({ serial }) => (serial === null ? [] : [serial])),
      mass_kg: same.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
    };
  });
}

/** What is kept of each unit that goes: its certificates travel with it. */
function certificatesOf({ pieces }: PickFacts): readonly CertificateInput[] {
  return pieces.flatMap(({ row, unit, model }) =>
    (
      [
        ['inspection', unit.inspection_done_on, unit.inspection_due_on],
        ['calibration', unit.calibration_done_on, unit.calibration_due_on],
      ] as const
    ).flatMap(([kind, doneOn, dueOn]) =>
      doneOn === null || dueOn === null ? [] : [{ serial: row.unit_serial, name: model.name, kind, doneOn, dueOn }],
    ),
  );
}

function labelSheet(
  context: Context,
  { facts, view }: { readonly facts: PickFacts; readonly view: PackingView },
): CaseLabelSheet {
  const house = houseFacts(context).name;
  return {
    title: `Case labels ${view.number}`,
    fixedAt: today(context),
    house,
    cases: view.cases.map((box) => caseLabel(box, { facts, view })),
  };
}

function caseLabel(
  box: CaseView,
  { facts, view }: { readonly facts: PickFacts; readonly view: PackingView },
): CaseLabel {
  const { papers } = facts;
  return {
    code: caseCode({ booking: view.number, number: box.number }),
    booking: view.number,
    place: `${box.name === 'loose' ? 'Loose piece' : 'Case'} ${box.number} of ${view.cases.length}`,
    mass: massText(box.mass_kg, 'si'),
    lift: box.lift,
    to: papers === null ? [] : [papers.customer.name, `${papers.site.name ?? papers.title} · crew ${box.crew}`],
    contents: box.contents.map(
      ({ code, name, count, serial }) => `${serial === null ? `${count} × ${code}` : code}  ${name}`,
    ),
    goods: box.goods.flatMap(({ un, name, marks, sentence }) =>
      un === null
        ? [sentence]
        : [`${un} ${name ?? ''}`.trim(), ...marks.filter((mark) => mark !== un && mark !== name)],
    ),
  };
}
