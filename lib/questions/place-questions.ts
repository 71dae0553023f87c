/*
 * Questions about the place of a valve: what may be used there, what it stands on, what takes the reaction.
 * Invariant: as in question-table.ts.
 * Not here: questions about the valve itself (question-table.ts).
 * Read next: question-table.ts.
 */
import type { Answer, QuestionSpec } from './question.ts';

function choices(...texts: readonly (readonly [text: string, weight: number])[]): () => readonly Answer[] {
  return () => texts.map(([text, weight]) => ({ text, weight }));
}

const always = (): boolean => true;

export const PLACE_QUESTIONS: readonly QuestionSpec[] = [
  {
    column: 'zone',
    answered: 'by choice',
    usualWeight: 4,
    applies: ({ site }) => site.zone === undefined,
    answers: choices(['none', 8], ['2', 1], ['1', 1]),
  },
  {
    column: 'locked',
    answered: 'by choice',
    usualWeight: 1.5,
    applies: always,
    answers: choices(['no', 8], ['yes', 1]),
  },
  {
    column: 'service',
    answered: 'by choice',
    usualWeight: 1,
    applies: always,
    answers: choices(['potable', 3], ['sewage', 1], ['other', 3], ['oxygen', 1], ['toxic', 1]),
  },
  {
    column: 'enclosed',
    answered: 'by choice',
    usualWeight: 0.8,
    applies: ({ site }) => site.enclosed === undefined,
    answers: choices(['no', 3], ['yes', 1]),
  },
  {
    column: 'faces',
    answered: 'by choice',
    usualWeight: 1.5,
    applies: ({ duty }) => duty.grip.kind === 'wheel',
    answers: choices(['up', 4], ['side', 2], ['down', 1]),
  },
  {
    column: 'anchor',
    answered: 'by choice',
    usualWeight: 1.5,
    applies: always,
    answers: choices(['structure', 2], ['yoke', 2], ['large pipe', 1], ['none', 2]),
  },
  {
    column: 'surface',
    answered: 'by choice',
    usualWeight: 0.8,
    applies: ({ duty }) => duty.grip.kind === 'nut',
    answers: choices(['asphalt', 3], ['concrete', 2], ['grass', 2], ['grating', 1]),
  },
  {
    column: 'clear_radius',
    answered: 'by number',
    usualWeight: 0.7,
    applies: ({ duty }) => duty.grip.kind === 'wheel',
    answers: choices(['300 mm', 1], ['600 mm', 1], ['1200 mm', 1]),
  },
  {
    column: 'headroom',
    answered: 'by number',
    usualWeight: 0.6,
    applies: always,
    answers: choices(['0.5 m', 1], ['1.5 m', 1], ['3 m', 1]),
  },
  {
    column: 'vehicle_distance',
    answered: 'by number',
    usualWeight: 0.6,
    applies: ({ site }) => site.vehicleAccess !== false,
    answers: choices(['2 m', 1], ['10 m', 1]),
  },
];
