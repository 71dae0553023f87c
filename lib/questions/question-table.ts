/*
 * The questions that a person at a valve can answer by looking, with a tape, or by asking somebody.
 * Invariant: an answer's text is read by intake without a problem; a test reads each of them.
 * Not here: which question is worth asking now (next-question.ts) and the words (lib/wording).
 * Read next: place-questions.ts.
 */
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { PLACE_QUESTIONS } from './place-questions.ts';
import type { Answer, QuestionSpec, ReadTold } from './question.ts';

/** Weights of answers: how common each is. Common practice, no source. */
function choices(...texts: readonly (readonly [text: string, weight: number])[]): () => readonly Answer[] {
  return () => texts.map(([text, weight]) => ({ text, weight }));
}

const isWheel = ({ duty }: ReadTold): boolean => duty.grip.kind === 'wheel';
const isNut = ({ duty }: ReadTold): boolean => duty.grip.kind === 'nut';
const always = (): boolean => true;

/** Low, likely and high of a range as it stands, as texts that a person might have read off. */
function fromRange(pick: (told: ReadTold) => Known<Unit>, asText: (value: number) => string) {
  return (told: ReadTold): readonly Answer[] => {
    const { low, nominal, high } = pick(told);
    const texts = [low, nominal, high].map(asText);
    return [...new Set(texts)].map((text) => ({ text, weight: text === texts[1] ? 2 : 1 }));
  };
}

const VALVE_QUESTIONS: readonly QuestionSpec[] = [
  {
    column: 'driven_by',
    answered: 'by choice',
    usualWeight: 3,
    applies: always,
    answers: choices(
      ['handwheel', 5],
      ['key cap', 3],
      ['nut', 2],
      ['gearbox wheel', 2],
      ['pillar', 1],
      ['chain wheel', 1],
      ['actuator hand drive', 1],
    ),
  },
  {
    column: 'valve_type',
    answered: 'by choice',
    usualWeight: 2,
    applies: always,
    answers: choices(['gate', 6], ['globe', 2], ['butterfly', 2], ['penstock', 1], ['hydrant', 1]),
  },
  {
    column: 'size',
    answered: 'by number',
    usualWeight: 3,
    applies: always,
    answers: choices(['DN 100', 3], ['DN 200', 3], ['DN 300', 2], ['DN 500', 1]),
  },
  {
    column: 'condition',
    answered: 'by choice',
    usualWeight: 2.5,
    applies: always,
    answers: choices(['free', 4], ['stiff', 3], ['seized', 1]),
  },
  {
    column: 'last_operated',
    answered: 'by number',
    usualWeight: 1,
    applies: always,
    answers: choices(['1 year', 3], ['5 years', 3], ['20 years', 1]),
  },
  {
    column: 'differential_pressure',
    answered: 'by number',
    usualWeight: 1.5,
    applies: ({ duty }) => duty.movement !== 'keyed',
    answers: choices(['0 bar', 1], ['4 bar', 2], ['10 bar', 2], ['16 bar', 1]),
  },
  {
    column: 'turns',
    answered: 'by number',
    usualWeight: 0.8,
    applies: always,
    answers: fromRange(
      ({ duty }) => duty.turns,
      (value) => String(Math.max(1, Math.round(value))),
    ),
  },
  {
    column: 'max_torque',
    answered: 'by number',
    usualWeight: 1,
    applies: ({ duty }) => duty.opening.neverExceed.torque.high > 0,
    answers: fromRange(
      ({ duty }) => duty.opening.neverExceed.torque,
      (value) => `${Math.max(5, Math.round(value / 5) * 5)} N·m`,
    ),
  },
  {
    column: 'gear_ratio',
    answered: 'by number',
    usualWeight: 1.5,
    applies: ({ duty }) => duty.movement === 'geared',
    answers: choices(['30', 1], ['60', 1], ['120', 1]),
  },
];

const GRIP_QUESTIONS: readonly QuestionSpec[] = [
  {
    column: 'stem',
    answered: 'by choice',
    usualWeight: 2.5,
    applies: (told) => isWheel(told) && told.duty.movement === 'screw',
    answers: choices(['rising through the wheel', 3], ['non-rising', 3], ['rising with the wheel', 1]),
  },
  {
    column: 'wheel_diameter',
    answered: 'by number',
    usualWeight: 2.5,
    applies: isWheel,
    answers: choices(['200 mm', 2], ['350 mm', 3], ['500 mm', 2], ['700 mm', 1]),
  },
  {
    column: 'wheel_spokes',
    answered: 'by number',
    usualWeight: 1,
    applies: isWheel,
    answers: choices(['3', 1], ['4', 2], ['5', 2], ['6', 1]),
  },
  {
    column: 'wheel_dish',
    answered: 'by number',
    usualWeight: 0.8,
    applies: isWheel,
    answers: choices(['0°', 2], ['10°', 1], ['20°', 1]),
  },
  {
    column: 'stem_protrusion',
    answered: 'by number',
    usualWeight: 1,
    applies: (told) => isWheel(told) && told.duty.grip.stemRisesThroughWheel !== 'no',
    answers: choices(['0 mm', 1], ['150 mm', 2], ['400 mm', 1]),
  },
  {
    column: 'nut_size',
    answered: 'by number',
    usualWeight: 2,
    applies: isNut,
    answers: ({ duty }) => {
      const sizes = (duty.grip.nutSizes ?? []).map(({ nominal }) => `${Math.round(nominal * 1000)} mm`);
      return [...new Set(sizes)].slice(0, 4).map((text) => ({ text, weight: 1 }));
    },
  },
  {
    column: 'nut_shape',
    answered: 'by choice',
    usualWeight: 1,
    applies: isNut,
    answers: choices(['square', 3], ['tapered square', 2], ['hexagon', 1], ['pentagon', 1]),
  },
  {
    column: 'nut_wear',
    answered: 'by choice',
    usualWeight: 0.8,
    applies: isNut,
    answers: choices(['good', 3], ['worn', 2], ['rounded', 1]),
  },
  {
    column: 'depth_to_nut',
    answered: 'by number',
    usualWeight: 2,
    applies: isNut,
    answers: choices(['0.3 m', 1], ['1 m', 3], ['1.8 m', 2], ['3 m', 1]),
  },
];

/** All questions, in the order in which one walks up to a valve. */
export const QUESTIONS: readonly QuestionSpec[] = [...VALVE_QUESTIONS, ...GRIP_QUESTIONS, ...PLACE_QUESTIONS];
