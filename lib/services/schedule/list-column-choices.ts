/*
 * What a column of a list, or of the schedule, may mean: names with labels, help and examples.
 * Invariant: read from the columns of intake, never a second list.
 * Not here: matching headers (lib/intake).
 * Read next: ../../intake/columns.ts.
 */
import { COLUMNS } from '#lib/intake/columns.ts';
import type { Mapping } from '#lib/intake/propose-mapping.ts';

export interface ColumnChoice {
  readonly name: Mapping['columns'][number]['field'];
  readonly label: string;
  readonly help: string;
  readonly example: string;
  readonly howToMeasure: string;
}

export function listColumnChoices(): readonly ColumnChoice[] {
  return [
    { name: 'ignore', label: '— left out —', help: 'The column is not used.', example: '', howToMeasure: '' },
    {
      name: 'remark',
      label: 'Remark (values are read out of it)',
      help: 'Text that may hold values.',
      example: '',
      howToMeasure: '',
    },
    ...COLUMNS.map(({ name, label, help, example, howToMeasure }) => ({
      name,
      label,
      help,
      example: String(example),
      howToMeasure: howToMeasure ?? '',
    })),
  ];
}
