import { namedGas, temperatureClassFor } from '#lib/engineering/gas-classes.ts';
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import { type Marking, parseMarking } from '#lib/engineering/plate-marking.ts';
import type { DriveFacts } from '#lib/equipment/drive.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import { judge } from '#lib/rules/rule.ts';
import { lineFacts, said } from '#lib/rules/sample-facts.ts';
import { SAMPLE_AIR, SAMPLE_PETROL, sampleDrive } from '#lib/rules/sample-parts.ts';
import { celsius } from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { branch, each, namesOf, number, text } from './given.ts';

/* Hazardous areas and enclosed places: markings, zones, groups, temperature classes, refusals of drives. */
const GAS_CLASSES = ['T1', 'T2', 'T3', 'T4', 'T5', 'T6'];
const GAS_GROUPS = ['IIA', 'IIB', 'IIC'];
const ZONES = ['0', '1', '2', '20', '21', '22'];
const LEVELS: Readonly<Record<string, string>> = { '1': 'a', '2': 'b', '3': 'c' };
/** No temperature class is easier to meet than this. */
const EASIEST_SURFACE = 'T450°C';

function marked(category: string, atmosphere: string): string {
  const [group, surface] = atmosphere === 'D' ? ['IIIC', 'T80°C'] : ['IIC', 'T6'];
  return `II ${category} ${atmosphere} Ex h ${group} ${surface} ${atmosphere}${LEVELS[category]}`;
}

const zone: Check = {
  find: ({ inputs }) => {
    const atmosphere = text(inputs, 'atmosphere');
    const place = { zone: text(inputs, 'zone'), gasGroup: null, temperatureClass: null };
    const taken = ['1', '2', '3'].flatMap((category) => {
      const answer = suitsPlace({ marking: marked(category, atmosphere), place });
      return answer.ok && answer.value !== null ? [answer.value] : [];
    });
    return {
      categories: taken.map((marking) => `${marking.category}${marking.atmosphere}`),
      epl: taken.map((marking) => marking.level),
    };
  },
};

const isTakenIn = (gasGroup: string, equipment: string): boolean =>
  suitsPlace({
    marking: `II 2 G Ex h ${equipment} T6 Gb`,
    place: { zone: '1', gasGroup, temperatureClass: 'T1' },
  }).ok;

const groupsFor = (equipment: string): Value => GAS_GROUPS.filter((gasGroup) => isTakenIn(gasGroup, equipment));

/** The hottest marked surface that a place of this class still takes, by trying every degree. */
const surface: Check = {
  find: ({ inputs }) => {
    const temperatureClass = text(inputs, namesOf(inputs)[0] ?? '');
    const place = { zone: '1', gasGroup: 'IIA', temperatureClass };
    const taken = Array.from({ length: 500 }, (_, index) => index + 50).filter(
      (degrees) => suitsPlace({ marking: `II 2 G Ex h IIC T${degrees}°C Gb`, place }).ok,
    );
    return { max_surface_degC: Math.max(...taken) };
  },
};

function zonesOf(marking: string): readonly string[] {
  return ZONES.filter((one) => {
    const gasGroup = one.length === 2 ? 'IIIA' : 'IIA';
    return suitsPlace({ marking, place: { zone: one, gasGroup, temperatureClass: EASIEST_SURFACE } }).ok;
  });
}

const partsOf = (marking: Marking) => ({
  group: marking.group,
  category: marking.category,
  atm: marking.atmosphere,
  prot: marking.protections,
  subgroup: marking.subgroup,
  t: marking.temperature,
  epl: marking.level,
  suffix: marking.special ? 'X' : null,
});

const plate: Check = {
  find: ({ inputs }) => {
    const marking = text(inputs, 'marking');
    const read = parseMarking(marking);
    return { ...(read.ok ? partsOf(read.value) : {}), zones: zonesOf(marking), consistent: read.ok };
  },
};

const UNREAD = 'a plate that contradicts itself counts as unmarked, and none of its parts is used';
const contradictory: Check = {
  ...plate,
  besides: Object.fromEntries(
    ['group', 'category', 'atm', 'prot', 'subgroup', 't', 'epl', 'suffix'].map((part) => [part, UNREAD]),
  ),
};

const caseOf: Check = {
  find: ({ inputs }) => {
    const marking = branch(inputs, 'marking');
    const answer = suitsPlace({
      marking: marking === null ? null : text(marking),
      place: {
        zone: text(inputs, 'zone'),
        gasGroup: text(inputs, 'gas_group'),
        temperatureClass: text(inputs, 't_required'),
      },
    });
    return { decision: answer.ok ? 'allow' : 'refuse' };
  },
};

/** The name of the gas stands in the id. */
const gas: Check = {
  find: ({ id, inputs }) => {
    const name = id.replace('HAZ-GAS-', '').replaceAll('-', ' ').toLowerCase();
    return {
      group: namedGas(name)?.gasGroup ?? null,
      t_class: temperatureClassFor(celsius(number(inputs, 'autoignition_degC'))),
    };
  },
};

/** The decision of a rule of the house on a drive at a place. */
function decision(question: {
  readonly rule: string;
  readonly power: DriveFacts['power'] | null;
  readonly place: NonNullable<Parameters<typeof lineFacts>[0]>['place'];
}): string {
  const rule = RULES_OF.part.find(({ id }) => id === question.rule);
  if (rule === undefined) throw new Error(`There is no rule “${question.rule}”.`);
  const part = sampleDrive(question.power === null ? {} : { facts: { power: question.power } });
  const place = question.place === undefined ? {} : { place: question.place };
  const finding = judge(rule, { ...lineFacts(place), part });
  return finding?.severity === 'refusal' ? 'refuse' : 'allow';
}

const POWERS: Readonly<Record<string, DriveFacts['power'] | null>> = {
  air: SAMPLE_AIR,
  petrol: SAMPLE_PETROL,
  battery: null,
};

const inZone =
  (rule: string): Check['find'] =>
  ({ inputs }) => ({
    decision: decision({
      rule,
      power: POWERS[text(inputs, 'drive')] ?? null,
      place: { zone: said(text(inputs, 'zone')) },
    }),
  });

/** A division is no zone that is known: refused until the area's own classification is asked. */
const inDivision = (marking: string, place: string): boolean =>
  suitsPlace({ marking, place: { zone: place, gasGroup: 'IIA', temperatureClass: 'T1' } }).ok;

const ASKED = 'a division is refused until somebody says the zone, which is on the safe side';
const NOT_READ = 'marks of divisions are not read and count as unmarked, which is on the safe side';

function same(ids: readonly string[], check: Check): Checks {
  return Object.fromEntries(ids.map((id) => [id, check]));
}

export const PLACE_CHECKS: Checks = {
  ...same(['HAZ-ZONE-G0', 'HAZ-ZONE-G1', 'HAZ-ZONE-G2', 'HAZ-ZONE-D20', 'HAZ-ZONE-D22'], zone),
  'HAZ-GG-HIER': { find: ({ shape }) => each(shape, (name) => groupsFor(name.slice(0, 3))) },
  ...same(['HAZ-T-T2', 'HAZ-T-T3', 'HAZ-T-T4', 'HAZ-T-T5'], surface),
  ...same(['HAZ-T-T2A', 'HAZ-T-T2B', 'HAZ-T-T2C', 'HAZ-T-T2D', 'HAZ-T-T3B', 'HAZ-T-T3C', 'HAZ-T-T4A'], surface),
  ...same(
    [
      'HAZ-GAS-HYDROGEN',
      'HAZ-GAS-ACETYLENE',
      'HAZ-GAS-CARBON-DISULPHIDE',
      'HAZ-GAS-DIETHYL-ETHER',
      'HAZ-GAS-ETHYLENE',
      'HAZ-GAS-HYDROGEN-SULPHIDE',
      'HAZ-GAS-METHANE-INDUSTRIAL',
      'HAZ-GAS-AMMONIA',
      'HAZ-GAS-PETROL-VAPOUR',
    ],
    gas,
  ),
  'HAZ-TCLASS-RULE': {
    besides: {
      'default_Ta_degC > *': 'the air of the place is taken between −20 and +40 °C, and no other mark is read',
    },
    find: ({ inputs }) => {
      const marking = `II 2 G Ex h IIC ${text(inputs, 'equipment')} Gb`;
      const isTaken = (temperatureClass: string) =>
        suitsPlace({ marking, place: { zone: '1', gasGroup: 'IIC', temperatureClass } }).ok;
      return {
        ok_for: GAS_CLASSES.filter(isTaken),
        not_ok_for: GAS_CLASSES.filter((one) => !isTaken(one)),
      };
    },
  },
  'HAZ-NEC-IEC': {
    besides: {
      B: 'IIC, as ours; the entry names IIB+H2 beside it in the same words',
      C: 'a bare C may also be short for IIC, which is the harder and is taken',
      D: 'no group of ours: taken at its hardest until somebody says IIA',
      'Div1 > *': ASKED,
      'Div2 > *': ASKED,
    },
    find: () => ({ A: GAS_GROUPS.find((group) => isTakenIn('A', group)) ?? 'none' }),
  },
  'HAZ-NEC-TRAP': {
    besides: { zone0_in_div1: ASKED, zone2_in_div2: ASKED, div1_in_zone1: NOT_READ },
    find: () => ({
      zone1_in_div1: inDivision(marked('2', 'G'), 'Class I Division 1'),
      div2_in_zone1: inDivision('Class I, Division 2, Group D, T4', '1'),
    }),
  },
  ...same(['HAZ-MARK-1', 'HAZ-MARK-2', 'HAZ-MARK-3', 'HAZ-MARK-5', 'HAZ-MARK-6', 'HAZ-MARK-7'], plate),
  'HAZ-MARK-8': contradictory,
  'HAZ-AIRMOTOR': { find: inZone('zone-marking') },
  'HAZ-PETROL': { find: inZone('petrol-not-in-zone') },
  'HAZ-BATT': {
    besides: { permit_LEL_pct_max: 'hot-work permits and gas tests are the site’s own' },
    find: inZone('zone-marking'),
  },
  ...same(
    Array.from({ length: 10 }, (_, index) => `HAZ-CASE-${index + 1}`),
    caseOf,
  ),
  'CO-RULE': {
    find: ({ inputs }) => ({
      decision: decision({
        rule: 'petrol-not-enclosed',
        power: POWERS[text(inputs, 'drive')] ?? null,
        place: { enclosed: said(branch(inputs, 'confined') === true) },
      }),
    }),
  },
};
