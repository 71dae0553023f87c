/*
 * The ledger of entries that no check of ours covers, and why, a sentence each.
 * Invariant: an id stands here or in a check, never in both and never in neither (engineering-ledger.test.ts).
 * Not here: parts of a checked entry that are not ours (`besides` of its check).
 * Read next: checks.ts.
 */
export interface LeftOut {
  readonly ids: readonly string[];
  readonly because: string;
}

const VALVES: readonly LeftOut[] = [
  {
    ids: ['ST-02', 'SG-02', 'EN-07', 'HAV-EX-WEB2', 'TRQ-MVC', 'TRQ-RULE'],
    because: 'Its confidence is low: it may guide a default of ours, which says so, and never a test.',
  },
  {
    ids: ['KN-02'],
    because:
      'Three towns’ rules on when an extension stem is built in; ours reaches the nut where it is, by its depth.',
  },
  {
    ids: ['IF-02'],
    because:
      'No square is chosen by its flange; tests/reference holds the pairs against our torsion formula as plausible.',
  },
  {
    ids: ['SD-01', 'SD-02', 'SD-03', 'SD-04'],
    because:
      'Couplings join by nominal size alone and a model states its own rating; no limits, inches or test torques.',
  },
  { ids: ['DM-03'], because: 'Voltage, current and no-load loss: a drive’s data are torque and speed, never amperes.' },
  {
    ids: ['AC-02', 'AC-03', 'AC-04'],
    because:
      'Receivers, compressor power and valve coefficients belong to the site’s supply, which states pressure and flow.',
  },
  {
    ids: ['BT-01'],
    because: 'An identity without a value to compare; DG-WH holds the product of volts and ampere-hours.',
  },
];

const PLACES: readonly LeftOut[] = [
  {
    ids: ['HAZ-ZONE-DUR', 'HAZ-GG-MESG', 'HAZ-NEC-GROUPS'],
    because:
      'How an area is classified is the site’s own work; ours takes zone, group and class as stated, else the hardest.',
  },
  { ids: ['HAZ-GAS-NOTE'], because: 'Advice on choosing test cases, with no value.' },
  { ids: ['HAZ-MARK-GRAMMAR'], because: 'A grammar with no value; HAZ-MARK-1 to 8 are read by ours.' },
  {
    ids: ['HAZ-MARK-OLD'],
    because: 'An old mark is read as it stands and called old; its letters are not translated into today’s.',
  },
  {
    ids: ['CO-UK', 'CO-OSHA', 'CO-NIOSH', 'CO-TWA-1', 'CO-TWA-2', 'CO-TWA-3'],
    because:
      'Carbon monoxide is not measured or averaged: a petrol drive is refused in every enclosed place (CO-RULE).',
  },
  {
    ids: ['CS-ATM'],
    because: 'The gas test of an enclosed place is the site’s; ours says that it comes first and judges no reading.',
  },
  {
    ids: ['ROAD-UK', 'ROAD-US'],
    because: 'Signing and guarding of works in a road follow the place’s own code, which no figure of ours decides.',
  },
  {
    ids: ['MAC-13850', 'MAC-ESTOP-HH', 'MAC-13851', 'MAC-HOLD'],
    because: 'Controls of a machine are its maker’s to prove; a drive’s data say hold-to-run or not.',
  },
  {
    ids: ['MAC-LOTO', 'MAC-LOTO-CAUTION'],
    because:
      'Isolation is the place’s own procedure; ours refuses a valve that somebody has locked and lists no steps.',
  },
  {
    ids: ['AIR-MSHA', 'AIR-WHIP-NOTE', 'AIR-4414'],
    because:
      'A hose restraint goes with every hose that is hired out, whatever its bore, so the threshold decides nothing.',
  },
  { ids: ['AIR-BREATHE'], because: 'Air for breathing is never supplied.' },
];

const PEOPLE: readonly LeftOut[] = [
  {
    ids: ['HAV-A8', 'HAV-SUM', 'NOI-LEX', 'NOI-PTS', 'MH-N-EQ'],
    because: 'A definition with no value; the worked entries beside it hold the same formula of ours.',
  },
  { ids: ['HAV-SCREEN', 'HAV-K'], because: 'Screening by kind of tool, where ours works from the declared value.' },
  {
    ids: [
      'NOI-OSHA-90',
      'NOI-OSHA-95',
      'NOI-OSHA-97',
      'NOI-OSHA-100',
      'NOI-OSHA-102',
      'NOI-OSHA-110',
      'NOI-OSHA-115',
      'NOI-G16A-80',
      'NOI-G16A-81',
      'NOI-G16A-83',
      'NOI-G16A-84',
      'NOI-G16A-85',
      'NOI-G16A-86',
      'NOI-OSHA-AL',
      'NOI-OSHA-FE',
    ],
    because:
      'Worked with a 5 dB exchange rate; ours has 3 dB throughout, which allows less time at every level above its limit.',
  },
  {
    ids: ['MH-N-CONST-US', 'MH-N-EX1', 'MH-N-EX4'],
    because:
      'Worked with the US constants, up to 3.3 % off the manual’s metric ones that are ours and so beyond the tolerance stated; tests/reference holds the examples at 3.3 %.',
  },
  {
    ids: ['MH-N-CLI', 'MH-N-SFREQ', 'MH-N-DUR'],
    because: 'Several lifting tasks mixed in a shift: ours screens each lift of a case by itself.',
  },
  {
    ids: ['MH-N-REFUSE'],
    because: 'A list of exclusions with no value; tests/reference holds that ours refuses them.',
  },
  {
    ids: ['MH-L23-CARRY', 'MH-MAC-TEAM', 'MH-ISO11228'],
    because:
      'Carrying, pushing and the bands of other standards are not screened: ours has one filter and one equation.',
  },
];

const REACTIONS: readonly LeftOut[] = [
  {
    ids: ['TRQ-11148', 'TRQ-11148-SCOPE', 'TRQ-6544', 'TRQ-NOLIMIT', 'TRQ-KIHL', 'TRQ-OHRADWIN'],
    because: 'Of tools held by hand: no drive of ours is held without a restraint, at whatever torque.',
  },
  {
    ids: [
      'RES-G8-6',
      'RES-G8-7',
      'RES-G8-10',
      'RES-G8-13',
      'RES-G8-16',
      'RES-G8-STRESS',
      'RES-G80-9_32',
      'RES-G80-5_16',
      'RES-G80-3_8',
      'RES-G80-1_2',
      'RES-WEB-VIOLET',
      'RES-WEB-GREEN',
      'RES-WEB-YELLOW',
      'RES-WEB-RED',
      'RES-WEB-BROWN',
      'RES-WEB-BLUE',
      'RES-WEB-ORANGE',
      'RES-SF',
      'RES-LASH',
    ],
    because:
      'What a chain or strap bears is the rating on its tag, a fact of the model; no rating is worked out from its size.',
  },
  {
    ids: ['RES-MULTI', 'RES-ANGLE-TRAP'],
    because: 'Legs that share a lifted load: a restraint is one pull at an angle to its arm.',
  },
  {
    ids: ['RES-TEMP', 'RES-WEBTEMP', 'RES-818-7', 'RES-DISCARD'],
    because: 'Heat, hoist chain and wear are judged when a chain or strap is inspected, before it goes out.',
  },
  {
    ids: ['RES-D', 'RES-D-EX1', 'RES-D-EX2', 'RES-D-EX3', 'RES-D-EX4', 'RES-V-EX', 'RES-BALL'],
    because: 'Ratings of a coupling on the road: a brace is an anchor of its own rating, and the vehicle stands still.',
  },
];

const YARD: readonly LeftOut[] = [
  {
    ids: ['DG-188-MARKEX', 'DG-MARK', 'DG-DOC', 'DG-DAMAGED', 'DG-WHLIMIT'],
    because: 'Marks, documents and damaged packs are the trained sender’s; ours says which provision applies.',
  },
  {
    ids: ['DG-966-967', 'DG-US-GROUND', 'DG-173220', 'DG-MOT'],
    because: 'Limits by one carrier or one country: ours asks the carrier by air and drains every machine.',
  },
  {
    ids: ['DG-1203-LQ', 'DG-1131C', 'DG-363-SIZE', 'DG-AIR-TOOL'],
    because: 'Fuel never travels in a case, machines travel drained and hoses vented, so these easements are not used.',
  },
  {
    ids: [
      'INS-LOLER',
      'INS-LOLER-HIRE',
      'INS-LASH-NOTE',
      'INS-6789',
      'INS-6789-TOL',
      'INS-40V',
      'INS-RCD',
      'INS-PAT-HIRE',
      'INS-PAT-SITE',
      'INS-PSSR-1',
      'INS-PSSR-2',
      'INS-PSSR-3',
      'INS-PSSR-4',
      'INS-HOSE',
    ],
    because: 'Inspection dates belong to the yard’s book of units, and no rule there works an interval out yet.',
  },
];

const PAPERS: readonly LeftOut[] = [
  {
    ids: ['GS1-ALG', 'C128-ALG', 'EN16931-RULES'],
    because: 'A rule with no value; the worked entries beside it hold the same code of ours.',
  },
  { ids: ['GS1-AI'], because: 'Papers and cases carry the house’s own numbers, without application identifiers.' },
  {
    ids: ['UBL-PKG'],
    because: 'No packing document of its own leaves the house as XML: the despatch advice (UBL-DES) names every case.',
  },
  {
    ids: ['HIRE-HOURS', 'HIRE-MONTH', 'HIRE-WEEKEND'],
    because: 'Ours charges by days, weeks and four weeks: no metered hours, calendar months or parts of a day.',
  },
  {
    ids: ['HIRE-RATIO', 'HIRE-DW'],
    because: 'Usual ranges of a rate card and a waiver, which are the house’s own data and no formula.',
  },
];

export const LEFT_OUT: readonly LeftOut[] = [...VALVES, ...PLACES, ...PEOPLE, ...REACTIONS, ...YARD, ...PAPERS];
