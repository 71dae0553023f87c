/*
 * Every limit of the tool, named with its unit, in one place.
 * Invariant: reaching a limit is an answer the user can read, never a crash.
 * Not here: physical bounds of a formula (they stand beside the formula).
 * Read next: ../intake/.
 */
export const LIMITS = {
  list_bytes: 10 * 1024 * 1024,
  attachment_bytes: 10 * 1024 * 1024,
  /** A photograph of a piece at its return, and how many a piece may have. */
  photo_bytes: 8 * 1024 * 1024,
  photos_of_piece: 12,
  list_rows: 20_000,
  list_columns: 200,
  cell_characters: 2_000,
  /** Unpacked bytes that an XLSX may hold before it is called a zip bomb. */
  workbook_unpacked_bytes: 200 * 1024 * 1024,
  schedule_lines: 20_000,
  crews: 12,
  hire_days: 366,
  manual_lines: 100,
  /** Options that one quote may offer. */
  quote_options: 4,
  /** Minor units and pieces of one line that is added by hand. */
  line_minor: 1_000_000_000,
  line_quantity: 100_000,
  /** Valves, bytes of one file, and photos of an order that is made without the Desk. */
  self_service_lines: 200,
  self_service_file_bytes: 8 * 1024 * 1024,
  self_service_photos: 60,
  assemblies_listed_per_line: 200,
  /** Draws of what is not known, for one line's spread. */
  spread_runs: 10_000,
} as const;
