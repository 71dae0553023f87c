/*
 * What a browser or another system may send of visits: what was found at the valves of an enquiry, and whether a record is used.
 * Invariant: only the names of columns are checked here; what a cell means is read by lib/found.
 * Not here: other requests (requests.ts).
 * Read next: ../services/visits/record-visits.ts.
 */
import { z } from 'zod';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

const cell = z.string().max(LIMITS.cell_characters);

const foundCells = z.strictObject({
  tag: cell,
  number: cell.optional(),
  visited_on: cell.optional(),
  by: cell.optional(),
  position_found: cell.optional(),
  turns: cell.optional(),
  full_stroke: cell.optional(),
  starting_torque: cell.optional(),
  running_torque: cell.optional(),
  highest_torque: cell.optional(),
  position_left: cell.optional(),
  condition: cell.optional(),
  closes: cell.optional(),
  wheel_diameter: cell.optional(),
  nut_size: cell.optional(),
  defects: cell.optional(),
});

/** Visits of the demo house: so many days before it is loaded. */
const demoVisitsSchema = z.array(
  z.strictObject({ enquiry: z.string(), days_before: z.number().int().positive(), cells: foundCells }),
);
export type DemoVisit = z.infer<typeof demoVisitsSchema>[number];

export function parseDemoVisits(json: unknown): Result<readonly DemoVisit[]> {
  const parsed = demoVisitsSchema.safeParse(json);
  return parsed.success ? ok(parsed.data) : failed({ code: 'visits-unreadable', sentence: parsed.error.message });
}

export const visitRowsSchema = z
  .object({
    rows: z
      .array(
        z.object({
          row: z.number().int().positive(),
          cells: foundCells,
        }),
      )
      .min(1)
      .max(LIMITS.schedule_lines),
  })
  .meta({ id: 'VisitRows', description: 'What was found at valves of an enquiry, as it was written down.' });

export const visitUseSchema = z
  .object({ use: z.enum(['yes', 'no']), reason: cell.default('') })
  .meta({ id: 'VisitUse', description: 'Whether a record of a visit may be used, and why not.' });
