/*
 * The words that a choice column understands, for forms that offer them.
 * Invariant: the same vocabulary that readers choose from, never a second list.
 * Not here: the patterns that mean a word (choice-words.ts).
 * Read next: choice-words.ts.
 */
import { VALVE_TYPES } from '#lib/duty/schedule-line.ts';
import {
  ACTION_WORDS,
  CLOSES_WORDS,
  COLLAR_WORDS,
  CONDITION_WORDS,
  DRIVEN_BY_WORDS,
  FACES_WORDS,
  FLOWING_WORDS,
  GEARBOX_WORDS,
  MEASURED_AT_WORDS,
  NORMAL_POSITION_WORDS,
  NUT_SHAPE_WORDS,
  NUT_WEAR_WORDS,
  SERVICE_WORDS,
  STEM_WORDS,
  THREAD_HAND_WORDS,
} from './choice-words.ts';
import type { Column } from './column-names.ts';
import type { Vocabulary } from './column-spec.ts';
import { columnSpec } from './columns.ts';

const WORDS: Readonly<Record<Vocabulary, readonly string[]>> = {
  'valve type': VALVE_TYPES,
  action: ACTION_WORDS.values,
  flowing: FLOWING_WORDS.values,
  condition: CONDITION_WORDS.values,
  'normal position': NORMAL_POSITION_WORDS.values,
  stem: STEM_WORDS.values,
  'thread hand': THREAD_HAND_WORDS.values,
  'collar bearing': COLLAR_WORDS.values,
  gearbox: GEARBOX_WORDS.values,
  closes: CLOSES_WORDS.values,
  'driven by': DRIVEN_BY_WORDS.values,
  'measured at': MEASURED_AT_WORDS.values,
  'nut shape': NUT_SHAPE_WORDS.values,
  'nut wear': NUT_WEAR_WORDS.values,
  faces: FACES_WORDS.values,
  service: SERVICE_WORDS.values,
};

export function listChoices(column: Column): readonly string[] {
  const { reading } = columnSpec(column);
  if (reading.kind === 'choice') return WORDS[reading.words];
  return reading.kind === 'yes-no' ? ['yes', 'no'] : [];
}
