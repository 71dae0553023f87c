/*
 * Asks about zone, gas group and temperature class that cannot be read, and says what to write.
 * Invariant: a text that cannot be read stays and is judged at its hardest; a North American class is answered, never mapped.
 * Not here: the reading itself (../engineering/hazardous-place.ts) and what may stand there (rules).
 * Read next: assess-duty.ts.
 */
import { readHazardGroup, readZone, surfaceTemperature } from '#lib/engineering/hazardous-place.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { ScheduleLine } from './schedule-line.ts';
import type { Site } from './site.ts';

export const HAZARD_COLUMNS = ['zone', 'gas_group', 'temperature_class'] as const;
export type HazardColumn = (typeof HAZARD_COLUMNS)[number];

export interface HazardQuestion {
  readonly sentence: string;
  readonly remedy: string;
}

const LABELS: Readonly<Record<HazardColumn, string>> = {
  zone: 'Zone',
  gas_group: 'Gas group',
  temperature_class: 'Temperature class',
};
const REMEDIES: Readonly<Record<HazardColumn, string>> = {
  zone: 'Write 0, 1, 2 (gas), 20, 21, 22 (dust), mine (firedamp), or none.',
  gas_group: 'Write IIA, IIB, IIB+H2, IIC (gas), IIIA, IIIB, IIIC (dust), or I (firedamp).',
  temperature_class: 'Write T1 to T6, or the highest surface temperature such as T85 °C.',
};
const HARDEST: Readonly<Record<HazardColumn, string>> = {
  zone: 'until then nothing electrical or moving is passed for it',
  gas_group: 'IIC or IIIC, the hardest, is taken',
  temperature_class: 'T6 (85 °C), the hardest, is taken',
};

/** What to ask about a text of a list or site; null where it can be read. */
export function hazardQuestion(column: HazardColumn, text: string): HazardQuestion | null {
  const kind = kindOf(column, text);
  if (kind === 'read' || kind === 'none') return null;
  const what = `${LABELS[column]} “${text.trim()}”`;
  return {
    sentence:
      kind === 'north american'
        ? `${what} is North American (class, division or group by NEC Articles 500 to 506) and is not turned into a zone or group here, as Division 1 takes in zone 0 and the letters mean other gases; ${HARDEST[column]}.`
        : `${what} cannot be read; ${HARDEST[column]}.`,
    remedy: REMEDIES[column],
  };
}

export function hazardFindings({
  line,
  site,
}: {
  readonly line: ScheduleLine;
  readonly site: Site;
}): readonly Finding[] {
  const { zone, gasGroup, temperatureClass } = line.place;
  const given: readonly (readonly [HazardColumn, string | undefined, string | undefined])[] = [
    ['zone', zone?.value, site.zone],
    ['gas_group', gasGroup?.value, site.gasGroup],
    ['temperature_class', temperatureClass?.value, site.temperatureClass],
  ];
  return given.flatMap(([column, ofLine, ofSite]) => {
    const text = ofLine ?? ofSite;
    const question = text === undefined ? null : hazardQuestion(column, text);
    if (question === null) return [];
    const where = ofLine === undefined ? ' It is said for the whole site.' : '';
    return [
      {
        id: `place-${column.replaceAll('_', '-')}-unread`,
        severity: 'warning',
        about: [column],
        sentence: `${question.sentence}${where} ${question.remedy}`,
        source: 'IEC 60079-0 and 60079-10; NEC Articles 500 to 506, from memory',
      },
    ];
  });
}

/** Whether a zone is said and is none of the ways to say that there is none. */
export function isHazardous({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): boolean {
  const text = line.place.zone?.value ?? site.zone;
  return text !== undefined && readZone(text).kind !== 'none';
}

function kindOf(column: HazardColumn, text: string): 'read' | 'none' | 'north american' | 'unreadable' {
  if (column === 'zone') return readZone(text).kind;
  if (column === 'gas_group') return readHazardGroup(text).kind;
  if (/^\s*(?:none|no|n\/?a|-)?\s*$/i.test(text)) return 'none';
  return surfaceTemperature(text) === null ? 'unreadable' : 'read';
}
