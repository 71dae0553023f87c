/*
 * What a browser or another system may send: one zod schema a request body.
 * Invariant: nothing reaches a use case that has not passed one of these.
 * Not here: sites (site.ts) and equipment (equipment.ts).
 * Read next: ../services/.
 */
import { z } from 'zod';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';

const cellText = z.string().max(LIMITS.cell_characters);
const lineId = z.number().int().positive();

export const newEnquirySchema = z
  .object({
    title: z.string().max(200),
    customer: z.union([z.object({ id: z.number().int().positive() }), z.object({ name: z.string().max(200) })]),
    site: z.record(z.string(), z.unknown()).default({}),
    site_id: z.number().int().positive().optional(),
    contact_id: z.number().int().positive().optional(),
    reference: z.string().max(200).optional(),
    source: z.string().max(60).optional(),
    due_on: z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD').optional(),
    mine: z.enum(['yes', 'no']).optional(),
  })
  .meta({ id: 'NewEnquiry', description: 'A new enquiry for a known customer (id) or a new one (name).' });

export const enquiryEditSchema = z
  .object({
    version: z.number().int().optional(),
    title: z.string().min(1).max(200).optional(),
    site: z.record(z.string(), z.unknown()).optional(),
    preference: z.enum(['cost', 'pieces', 'time', 'surest']).optional(),
    paper_units: z.enum(['si', 'us']).optional(),
    constraints: z
      .object({
        lockedParts: z.array(z.string().max(40)).max(200),
        excludedParts: z.array(z.string().max(40)).max(200),
        pins: z.array(z.object({ tag: z.string().max(200), part: z.string().max(40) })).max(LIMITS.schedule_lines),
      })
      .optional(),
  })
  .meta({
    id: 'EnquiryEdit',
    description: 'What changes of an enquiry; the version guards against two people at once.',
  });

export const cellEditsSchema = z
  .object({
    edits: z
      .array(
        z.object({
          lineId,
          column: z.string().max(60),
          text: cellText,
          was: z.string().optional(),
          measured: z.boolean().optional(),
        }),
      )
      .min(1)
      .max(LIMITS.schedule_lines),
  })
  .meta({ id: 'CellEdits', description: 'Texts for cells of the schedule, saved together.' });

export const repairSchema = z
  .object({
    tags: z.array(z.string().max(LIMITS.cell_characters)).max(LIMITS.schedule_lines).optional(),
    lineIds: z.array(lineId).max(LIMITS.schedule_lines).optional(),
    repair: z.string().min(1).max(1_000),
  })
  .meta({ id: 'Repair', description: 'A repair that was offered for lines nothing serves, to be carried out.' });

export const adoptedCaseSchema = z
  .object({ key: z.string().min(1).max(60) })
  .meta({ id: 'AdoptedCase', description: 'Terms that an enquiry was tried under, to be taken over.' });

export const whatIfSchema = z
  .object({ column: z.string().max(60), text: cellText, measured: z.boolean().default(false) })
  .meta({ id: 'WhatIf', description: 'One input of a line with another value, to be worked out and not saved.' });

export const newLinesSchema = z
  .object({
    lines: z
      .array(
        z.object({
          cells: z.record(z.string(), cellText),
          measured: z.array(z.string()).optional(),
          place: z.object({ position: z.number(), row: z.number().int().nonnegative() }).optional(),
        }),
      )
      .min(1)
      .max(LIMITS.schedule_lines),
    after: z.number().int().nonnegative().optional(),
  })
  .meta({ id: 'NewLines', description: 'Lines typed or pasted; `after` names the line they follow, 0 the beginning.' });

export const removedLinesSchema = z
  .object({ lineIds: z.array(lineId).min(1).max(LIMITS.schedule_lines) })
  .meta({ id: 'RemovedLines' });

export const namedLinesSchema = z
  .object({ lineIds: z.array(lineId).max(LIMITS.schedule_lines) })
  .meta({ id: 'NamedLines', description: 'Lines to read.' });

export const movedLinesSchema = z
  .object({ lineIds: z.array(lineId).min(1).max(LIMITS.schedule_lines), before: z.number().int().nonnegative() })
  .meta({ id: 'MovedLines', description: 'Lines and the line that they come before; 0 is the end.' });

const columnName = z.string().max(60);

export const bulkEditSchema = z
  .object({
    lineIds: z.array(lineId).max(LIMITS.schedule_lines).optional(),
    edit: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('set'), column: columnName, text: cellText }),
      z.object({ kind: z.literal('measured'), column: columnName }),
      z.object({ kind: z.literal('unmeasured'), column: columnName }),
      z.object({
        kind: z.literal('replace'),
        find: cellText.min(1),
        put: cellText,
        columns: z.array(columnName).max(LIMITS.list_columns),
        match: z.enum(['part', 'whole']),
        letters: z.enum(['any', 'exact']),
      }),
    ]),
  })
  .meta({ id: 'BulkEdit', description: 'One column of many lines, or a text replaced wherever it stands.' });

export const mappingSchema = z
  .object({
    headerRow: z.number().int().nullable(),
    columns: z
      .array(
        z.object({
          index: z.number().int().nonnegative(),
          header: z.string(),
          field: z.string().max(60),
          unit: z.string().max(20).optional(),
          confidence: z.enum(['sure', 'likely', 'guess']).default('sure'),
          why: z.string().default('Chosen by hand.'),
        }),
      )
      .max(LIMITS.list_columns),
  })
  .meta({ id: 'Mapping', description: 'What each column of a list means.' });

export const listChoiceSchema = z
  .object({ table: z.string(), mapping: mappingSchema, existing: z.enum(['keep', 'replace']).default('keep') })
  .meta({ id: 'ListChoice', description: 'The sheet and the mapping to take lines with.' });

const takenRow = z.number().int().nonnegative();

export const comparisonChoiceSchema = z
  .object({
    table: z.string(),
    mapping: mappingSchema,
    existing: z.enum(['keep', 'replace']).default('keep'),
    change: z.number().int().nonnegative(),
    take: z.object({
      added: z.array(takenRow).max(LIMITS.list_rows),
      gone: z.array(lineId).max(LIMITS.schedule_lines),
      cells: z.array(z.object({ lineId, column: z.string().max(60) })).max(LIMITS.schedule_lines * 10),
      order: z.enum(['keep', 'list']),
    }),
  })
  .meta({ id: 'ComparisonChoice', description: 'What of a changed list is taken into the schedule.' });

export const acceptanceSchema = z
  .object({
    acceptedBy: z.string().trim().max(200).default(''),
    orderNumber: z.string().trim().max(100).default(''),
    /** Slot of the option that was ordered. */
    option: z.number().int().nonnegative().optional(),
  })
  .meta({ id: 'Acceptance', description: 'Who said yes for the customer, and the number of their order.' });

export const issueQuoteSchema = z
  .object({ preference: z.enum(['cost', 'pieces', 'time', 'surest']).optional(), version: z.number().int().optional() })
  .meta({ id: 'IssueQuote' });

export const priceChangeSchema = z
  .object({ version: z.number().int().nonnegative(), choices: z.record(z.string(), z.unknown()) })
  .meta({ id: 'PriceChange', description: 'What is chosen for the price of an option, made on a version of it.' });

export const newOptionSchema = z
  .object({ choices: z.record(z.string(), z.unknown()) })
  .meta({ id: 'NewOption', description: 'A further option of a quote, with crews, days and sources of its own.' });

export const approvalRequestSchema = z
  .object({ reason: z.string().max(1000) })
  .meta({ id: 'ApprovalRequest', description: 'Why a discount above the limit should be given.' });

export const approvalDecisionSchema = z
  .object({ decision: z.enum(['approved', 'refused', 'withdrawn']), reason: z.string().max(1000).default('') })
  .meta({ id: 'ApprovalDecision', description: 'What was decided on a discount, and why.' });

export const quoteMoveSchema = z
  .object({ to: z.enum(['declined', 'withdrawn', 'issued']), reason: z.string().max(1000).default('') })
  .meta({ id: 'QuoteMove', description: 'The state an issued quote moves to, and why.' });

export const cancellationSchema = z
  .object({ reason: z.string().max(1000) })
  .meta({ id: 'Cancellation', description: 'Why an acceptance is taken back.' });
