/** The facts of a site as the form asks for them; the keys are those of the site file. */
export interface SiteField {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly kind: 'text' | 'number' | 'date' | 'yes or no' | 'choice' | 'list';
  readonly choices?: readonly string[];
  /** What a choice is called where its value alone says too little. */
  readonly words?: Readonly<Record<string, string>>;
}

export interface SiteGroup {
  readonly title: string;
  readonly fields: readonly SiteField[];
}

export const SITE_GROUPS: readonly SiteGroup[] = [
  {
    title: 'Work',
    fields: [
      { key: 'name', label: 'Name of the site', help: 'As it stands on the papers.', kind: 'text' },
      { key: 'starts_on', label: 'First day of the hire', help: 'Stock is looked up from this day on.', kind: 'date' },
      { key: 'days', label: 'Days', help: 'Days of hire, the first included.', kind: 'number' },
      { key: 'crews', label: 'Crews', help: 'Each crew carries a kit of its own.', kind: 'number' },
      { key: 'persons_per_crew', label: 'Persons in a crew', help: 'Lifts are judged by it.', kind: 'number' },
      {
        key: 'shift_hours',
        label: 'Hours a day at the valves',
        help: 'Breaks and briefings left out.',
        kind: 'number',
      },
      {
        key: 'move_minutes',
        label: 'Minutes from valve to valve',
        help: 'Moving and finding the next one.',
        kind: 'number',
      },
      { key: 'operated', label: 'Our people operate', help: 'Labour is priced only then.', kind: 'yes or no' },
      {
        key: 'transport',
        label: 'Transport',
        help: 'Battery and fuel rules follow from it.',
        kind: 'choice',
        choices: ['road', 'air', 'sea'],
      },
    ],
  },
  {
    title: 'Power',
    fields: [
      {
        key: 'sources_allowed',
        label: 'Power sources allowed',
        help: 'battery, air, petrol: separated by commas.',
        kind: 'list',
      },
      { key: 'air_pressure', label: 'Air pressure at the supply', help: 'With its unit, such as 6 bar.', kind: 'text' },
      { key: 'air_flow', label: 'Air flow', help: 'Free air with its unit, such as 2000 l/min.', kind: 'text' },
      { key: 'mains_voltage', label: 'Mains voltage for charging', help: 'In volts.', kind: 'number' },
      { key: 'mains_plug', label: 'Mains plug', help: 'As on the chargers.', kind: 'text' },
    ],
  },
  {
    title: 'Place',
    fields: [
      {
        key: 'vehicle_access',
        label: 'A vehicle gets to the valves',
        help: 'A tow-bar brace needs one.',
        kind: 'yes or no',
      },
      {
        key: 'anchors_allowed',
        label: 'What may take the reaction',
        help: 'structure, large pipe, yoke …: separated by commas.',
        kind: 'list',
      },
      {
        key: 'zone',
        label: 'Hazardous zone',
        help: 'By the site’s zone drawing.',
        kind: 'choice',
        choices: ['none', '0', '1', '2', '20', '21', '22', 'mine'],
        words: {
          none: 'none: not hazardous',
          '0': '0: gas, always',
          '1': '1: gas, at times',
          '2': '2: gas, rarely',
          '20': '20: dust, always',
          '21': '21: dust, at times',
          '22': '22: dust, rarely',
          mine: 'mine with firedamp',
        },
      },
      {
        key: 'gas_group',
        label: 'Gas or dust group',
        help: 'Not known is the hardest.',
        kind: 'choice',
        choices: ['IIA', 'IIB', 'IIB+H2', 'IIC', 'IIIA', 'IIIB', 'IIIC', 'I'],
      },
      {
        key: 'temperature_class',
        label: 'Temperature class',
        help: 'Dust goes by the degrees.',
        kind: 'choice',
        choices: ['T1', 'T2', 'T3', 'T4', 'T5', 'T6'],
        words: {
          T1: 'T1: 450 °C',
          T2: 'T2: 300 °C',
          T3: 'T3: 200 °C',
          T4: 'T4: 135 °C',
          T5: 'T5: 100 °C',
          T6: 'T6: 85 °C',
        },
      },
      {
        key: 'area_remark',
        label: 'Remark on the hazardous area',
        help: 'Printed, not read.',
        kind: 'text',
      },
      { key: 'enclosed', label: 'Indoors or in chambers', help: 'No petrol there.', kind: 'yes or no' },
      { key: 'altitude', label: 'Altitude', help: 'With its unit, such as 1200 m.', kind: 'text' },
      { key: 'temperature', label: 'Temperature', help: 'With its unit, such as -5 °C.', kind: 'text' },
      { key: 'noise_limit', label: 'Noise limit', help: 'Such as 80 dB.', kind: 'text' },
    ],
  },
];
