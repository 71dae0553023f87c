/*
 * Columns that say what the drive takes hold of: wheel, nut or spindle.
 * Invariant: plausible ranges are in SI and wide: they catch slips of unit and digit, not unusual valves.
 * Not here: how a cell is read (read-cell.ts).
 * Read next: columns.ts.
 */
import { usualRange } from '#lib/duty/plausible-values.ts';
import { type ColumnSpec, choiceReading, lengthReading, quantityReading } from './column-spec.ts';

export const DRIVE_COLUMNS: readonly ColumnSpec[] = [
  {
    name: 'driven_by',
    label: 'Driven by',
    group: 'drive',
    example: 'handwheel',
    help: 'What is turned: handwheel, nut, square, key cap, chain wheel, gearbox wheel, gearbox nut, pillar, extension spindle, or the hand drive of an actuator.',
    howToMeasure: 'Look, and send a photo.',
    unknown: 'Adapters for wheel and nut both go along.',
    aliases:
      'driven by|operator|operator type|operation|valve operation|valveoperation|operating mechanism|mode of operation|actuation|acionamento|accionamiento|betätigung|antrieb|commande|manœuvre|azionamento|привод|驱动方式'.split(
        '|',
      ),
    reading: choiceReading('driven by'),
  },
  {
    name: 'wheel_diameter',
    label: 'Wheel diameter',
    group: 'drive',
    example: '400 mm',
    help: 'Outside diameter of the handwheel rim.',
    howToMeasure: 'Tape across the rim.',
    unknown: 'Adapters for several wheels go along.',
    aliases:
      'wheel diameter|handwheel diameter|handwheel dia|hand wheel diameter|handwheel size|handwheel|wheel size|handrad|handraddurchmesser|diamètre volant|volant|diámetro volante|volante|diâmetro do volante|diametro volantino|маховик|手轮直径'.split(
        '|',
      ),
    reading: lengthReading(usualRange('wheel_diameter')),
  },
  {
    name: 'wheel_spokes',
    label: 'Wheel spokes',
    group: 'drive',
    example: '5',
    help: 'How many spokes the wheel has.',
    howToMeasure: 'Count.',
    unknown: 'A plate that takes any number goes along.',
    aliases: 'wheel spokes|spokes|number of spokes|speichen|rayons|radios|raios|razze'.split('|'),
    reading: { kind: 'count', low: 0, high: 16 },
  },
  {
    name: 'wheel_dish',
    label: 'Wheel dish',
    group: 'drive',
    example: '10°',
    help: 'How far the rim stands away from the hub, as an angle.',
    howToMeasure: 'Straight edge across the rim, depth to the hub; over the radius.',
    unknown: 'Adapters for flat and dished rims both go along.',
    aliases: 'wheel dish|dish|rim dish|dish angle|kröpfung|schüsselung'.split('|'),
    reading: quantityReading({ dimension: 'angle', bareUnits: ['°'], ...usualRange('wheel_dish') }),
  },
  {
    name: 'wheel_material',
    label: 'Wheel material',
    group: 'drive',
    example: 'cast iron',
    help: 'What the wheel is made of.',
    unknown: 'Cast iron is taken, the weaker.',
    aliases: 'wheel material|handwheel material|handradwerkstoff'.split('|'),
    reading: { kind: 'text' },
  },
  {
    name: 'stem_protrusion',
    label: 'Stem protrusion',
    group: 'drive',
    example: '160 mm',
    help: 'How far the stem stands out above the wheel.',
    howToMeasure: 'Rule from hub to stem end; say whether open or closed.',
    unknown: 'The whole travel is taken to stand out.',
    aliases: 'stem protrusion|protrusion|stem above wheel|spindelüberstand|dépassement tige'.split('|'),
    reading: lengthReading(usualRange('stem_protrusion')),
  },
  {
    name: 'protrusion_measured_at',
    label: 'Protrusion measured at',
    group: 'drive',
    example: 'open',
    help: 'open or closed.',
    unknown: 'The worse of the two is taken.',
    aliases: 'protrusion measured at|measured at|gemessen bei'.split('|'),
    reading: choiceReading('measured at'),
  },
  {
    name: 'stem_cover',
    label: 'Stem cover',
    group: 'drive',
    example: 'no',
    help: 'Whether a cover tube or an indicator sits over the stem.',
    unknown: 'The crew looks; it has to come off.',
    aliases: 'stem cover|cover tube|stem protector|spindelschutz|spindelschutzrohr|cache tige'.split('|'),
    reading: { kind: 'yes-no' },
  },
  {
    name: 'nut_size',
    label: 'Nut size',
    group: 'drive',
    example: '50 mm',
    help: 'Across flats of the operating nut or square; for a tapered one at the top, or top and base.',
    howToMeasure: 'Caliper across the flats, at the top and at the base.',
    unknown: 'Sockets for the common sizes go along.',
    aliases:
      'nut size|nutsize|operating nut size|nut|key size|square size|across flats|a/f|af|vierkant|schlüsselweite|sw|carré|cuadradillo|cuadrado|quadrado|quadro|квадрат'.split(
        '|',
      ),
    reading: { kind: 'nut' },
  },
  {
    name: 'nut_shape',
    label: 'Nut shape',
    group: 'drive',
    example: 'square',
    help: 'square, tapered square, hexagon or pentagon.',
    unknown: 'Sockets for squares go along first.',
    aliases: 'nut shape|nut type|nuttype|key shape|mutternform|forme carré'.split('|'),
    reading: choiceReading('nut shape'),
  },
  {
    name: 'nut_wear',
    label: 'Nut wear',
    group: 'drive',
    example: 'good',
    help: 'good, worn or rounded.',
    unknown: 'Worn is allowed for.',
    aliases: 'nut wear|nut condition|wear|verschleiß|usure|desgaste'.split('|'),
    reading: choiceReading('nut wear'),
  },
  {
    name: 'spindle_size',
    label: 'Spindle size',
    group: 'drive',
    example: '32 mm',
    help: 'Square or diameter of the extension spindle.',
    howToMeasure: 'Caliper.',
    unknown: 'The weaker of the common sizes is taken.',
    aliases: 'spindle size|extension spindle size|extension size|gestänge|einbaugarnitur'.split('|'),
    reading: lengthReading(usualRange('spindle_size')),
  },
  {
    name: 'spindle_length',
    label: 'Spindle length',
    group: 'drive',
    example: '1.5 m',
    help: 'Length of the extension spindle between valve and where it is turned.',
    howToMeasure: 'Depth from cap to valve.',
    unknown: 'The depth stands in.',
    aliases:
      'spindle length|extension length|extension spindle length|gestängelänge|longueur rallonge|longitud extensión'.split(
        '|',
      ),
    reading: lengthReading(usualRange('spindle_length')),
  },
];
