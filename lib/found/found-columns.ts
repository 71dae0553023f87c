/*
 * What a crew brings back from a valve, as columns: the blanks of the site sheet and what was measured besides.
 * Invariant: these names are shared by the record, the screen, the template and the import.
 * Not here: how a cell is read (read-found.ts).
 * Read next: read-found.ts.
 */
export const FOUND_COLUMN_NAMES = [
  'tag',
  'number',
  'visited_on',
  'by',
  'position_found',
  'turns',
  'full_stroke',
  'starting_torque',
  'running_torque',
  'highest_torque',
  'position_left',
  'condition',
  'closes',
  'wheel_diameter',
  'nut_size',
  'defects',
] as const;
export type FoundColumn = (typeof FOUND_COLUMN_NAMES)[number];

/** Text per column, as it was typed. */
export type FoundCells = Readonly<Partial<Record<FoundColumn, string | undefined>>>;

export interface FoundColumnSpec {
  readonly name: FoundColumn;
  /** As the screen, the template and problems name it. */
  readonly label: string;
  readonly example: string;
  readonly help: string;
  readonly aliases: readonly string[];
}

const SPECS: Readonly<Record<FoundColumn, Omit<FoundColumnSpec, 'name'>>> = {
  tag: {
    label: 'Valve',
    example: 'SV-101',
    help: 'The tag, as on the list.',
    aliases: ['tag', 'valve tag', 'valve id'],
  },
  number: {
    label: 'Number of several',
    example: '2',
    help: 'Which of several valves of one line; empty means the first.',
    aliases: ['number', 'valve number', 'no of several'],
  },
  visited_on: {
    label: 'When',
    example: '2026-03-12',
    help: 'The day of the visit, as 2026-03-12.',
    aliases: ['date', 'visited on', 'day', 'visited'],
  },
  by: { label: 'Who', example: 'T. Marl', help: 'Who counted and measured.', aliases: ['by', 'crew', 'who when'] },
  position_found: {
    label: 'As found',
    example: 'open',
    help: 'Where the valve stood before it was touched.',
    aliases: ['position found', 'position as found', 'found'],
  },
  turns: {
    label: 'Turns',
    example: '24.5',
    help: 'Turns counted over the stroke.',
    aliases: ['turns counted', 'counted turns'],
  },
  full_stroke: {
    label: 'Full stroke',
    example: 'yes',
    help: 'Whether the turns are those of a whole stroke; empty means yes. Turns of a part of a stroke are kept and not used.',
    aliases: ['whole stroke', 'complete stroke'],
  },
  starting_torque: {
    label: 'Starting torque',
    example: '140 N·m',
    help: 'Torque at the wheel or nut when it began to move.',
    aliases: ['torque to start', 'breakaway torque', 'unseating torque'],
  },
  running_torque: {
    label: 'Running torque',
    example: '70 N·m',
    help: 'Torque at the wheel or nut in the middle of the stroke.',
    aliases: ['torque to run'],
  },
  highest_torque: {
    label: 'Highest torque',
    example: '160 N·m',
    help: 'The highest torque seen at the wheel or nut over the stroke.',
    aliases: ['max torque seen', 'peak torque', 'highest torque seen'],
  },
  position_left: {
    label: 'As left',
    example: 'open',
    help: 'Where the valve was left.',
    aliases: ['position left', 'position as left', 'left'],
  },
  condition: { label: 'Condition', example: 'free', help: 'free, stiff or seized.', aliases: ['state', 'ease'] },
  closes: {
    label: 'Closes',
    example: 'clockwise',
    help: 'Which way it closes, seen facing the wheel or nut.',
    aliases: ['closing direction', 'direction to close'],
  },
  wheel_diameter: {
    label: 'Wheel',
    example: '400 mm',
    help: 'Diameter of the wheel, rim to rim.',
    aliases: ['wheel diameter', 'handwheel diameter', 'handwheel'],
  },
  nut_size: {
    label: 'Nut',
    example: '32 mm',
    help: 'Across flats of the nut or square.',
    aliases: ['nut size', 'square'],
  },
  defects: { label: 'Defects', example: 'gland weeps', help: 'What is wrong with it.', aliases: ['defect', 'remarks'] },
};

export const FOUND_COLUMNS: readonly FoundColumnSpec[] = FOUND_COLUMN_NAMES.map((name) => ({ name, ...SPECS[name] }));

export function foundLabel(name: FoundColumn): string {
  return SPECS[name].label;
}
