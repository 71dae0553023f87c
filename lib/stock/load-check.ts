/*
 * What is looked at before equipment leaves the yard, by what is loaded and how it travels: one question a line, each answered by a person.
 * Invariant: a question that must be answered with yes holds the load back until it is; the way of transport changes what is asked.
 * Not here: the declaration of dangerous goods and the driver's own duties; local rules and trained persons decide.
 * Read next: check-in.ts.
 */
export const TRANSPORTS = ['road', 'air', 'sea'] as const;
export type LoadTransport = (typeof TRANSPORTS)[number];

export interface LoadQuestion {
  readonly id: string;
  readonly words: string;
  /** Whose rule it is; `house practice` where it has no other source. */
  readonly source: string;
}

export interface Load {
  readonly transport: LoadTransport;
  readonly cases: number;
  /** Roles and kinds that decide what is asked. */
  readonly hasPetrol: boolean;
  readonly hasPacks: boolean;
  readonly hasHoses: boolean;
}

const HOUSE = 'house practice';

export function loadQuestions({ transport, cases, hasPetrol, hasPacks, hasHoses }: Load): readonly LoadQuestion[] {
  return [
    ...(cases === 0
      ? []
      : [
          {
            id: 'cases',
            words: `${cases} ${cases === 1 ? 'case is' : 'cases are'} closed, marked and on the vehicle`,
            source: HOUSE,
          },
        ]),
    {
      id: 'secured',
      words: 'Load secured, heaviest lowest',
      source: 'EN 12195-1 for load securing on road vehicles (from memory)',
    },
    { id: 'papers', words: 'Certificates, site sheets and packing list are with it', source: HOUSE },
    ...(hasPetrol
      ? [
          {
            id: 'drained',
            words: 'Petrol machines: tank and carburettor drained, run dry, cap closed',
            source: 'ADR special provision 363: a machine without fuel, tank drained, is not subject to ADR',
          },
        ]
      : []),
    ...(hasPacks ? [PACKS[transport]] : []),
    ...(hasHoses ? [{ id: 'vented', words: 'Air hoses and machines vented', source: HOUSE }] : []),
  ];
}

const PACKS: Readonly<Record<LoadTransport, LoadQuestion>> = {
  road: { id: 'packs', words: 'Packs charged, sound, terminals covered', source: 'ADR special provision 188' },
  sea: {
    id: 'packs',
    words: 'Packs sound, terminals covered, charge as the carrier asks',
    source: 'IMDG special provision 188',
  },
  air: {
    id: 'packs',
    words: 'Packs at 30 % charge or less, sound, terminals covered',
    source: 'IATA Dangerous Goods Regulations, packing instructions 965 and 966 (from memory)',
  },
};

/** Points of the instruction that goes with a hand-over, as they stand beside the signature. */
export const INSTRUCTION_POINTS: readonly string[] = [
  'How the drive is started, stopped and let go of',
  'How the restraint is set, and that no drive is held by hand alone',
  'Where the limiter starts, its steps and its ceiling; never past it',
  'What to do after a stall: release slowly, reverse to relieve',
  'Whom to call, and what to do if the valve breaks or will not shut',
];
