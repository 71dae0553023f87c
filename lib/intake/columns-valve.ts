/*
 * Columns that say what the valve is called, where it is in the list, what kind it is and the state it is in.
 * Invariant: plausible ranges are in SI and wide: they catch slips of unit and digit, not unusual valves.
 * Not here: how a cell is read (read-cell.ts).
 * Read next: columns.ts.
 */
import { usualRange } from '#lib/duty/plausible-values.ts';
import { type ColumnSpec, choiceReading, quantityReading } from './column-spec.ts';

export const IDENTITY_AND_VALVE_COLUMNS: readonly ColumnSpec[] = [
  {
    name: 'tag',
    label: 'Tag',
    group: 'identity',
    example: 'V-101',
    help: 'The name or number that the valve goes by on site.',
    unknown: 'The row number stands in, which nobody on site can read off the valve.',
    aliases:
      'tag no|tag number|valve tag|valve id|valve_id|valve no|valve number|valve ref|id_code|asset_id|asset no|asset number|facilityid|facility id|objectid|fid|id|ref|reference|equipment no|item no|item|no|nr|number|row|kks|funktionsort|armatur nr|schieber nr|numéro|repère|code|codigo|código|identificador|matricola|номер|обозначение|编号|位号'.split(
        '|',
      ),
    reading: { kind: 'text' },
  },
  {
    name: 'location',
    label: 'Location',
    group: 'identity',
    example: 'Mill Lane, chamber 4',
    help: 'Where the valve is: street, chamber, deck, unit, or coordinates.',
    unknown: 'The crew loses time in finding it.',
    aliases:
      'location|place|site|address|street|area|unit|lage|ort|standort|straße|lieu|emplacement|adresse|rue|ubicacion|ubicación|direccion|localização|localizacao|luogo|indirizzo|место|位置|longitude|latitude|lon|lat|easting|northing|x coord|y coord|grid ref|deck|chamber no|facility name'.split(
        '|',
      ),
    reading: { kind: 'text' },
  },
  {
    name: 'place_order',
    label: 'Working order',
    group: 'identity',
    example: '3',
    help: 'The order in which the valves are worked; it only sorts the sheets.',
    unknown: 'The sheets keep the order of the list.',
    aliases: 'place order|order|sequence|seq|route order|reihenfolge|ordre|orden|ordem|ordine|порядок'.split('|'),
    reading: { kind: 'count', low: 0, high: 1000000 },
  },
  {
    name: 'access_minutes',
    label: 'Access time',
    group: 'identity',
    example: '10 min',
    help: 'Minutes to get ready before the valve can be set up: lifting a cover, pumping out, a permit.',
    howToMeasure: 'Ask who goes there every week.',
    unknown: 'A house figure for moving and access stands in, and the day plan is less sure.',
    aliases: 'access minutes|access time|access min|access|zugangszeit|temps d’accès|tiempo de acceso'.split('|'),
    reading: quantityReading({ dimension: 'time', bareUnits: ['min'], ...usualRange('access_minutes') }),
  },
  {
    name: 'qty',
    label: 'Quantity',
    group: 'identity',
    example: '1',
    help: 'How many identical valves this line stands for.',
    unknown: 'One is taken.',
    aliases:
      'quantity|qty|no off|count|number of valves|pcs|anzahl|menge|stück|quantité|nombre|cantidad|cant|quantidade|qtd|quantità|количество|кол-во|数量'.split(
        '|',
      ),
    reading: { kind: 'count', low: 1, high: 1000 },
  },
  {
    name: 'strokes',
    label: 'Strokes a visit',
    group: 'identity',
    example: '2',
    help: 'How many full travels are made at one visit; 2 is out and back.',
    unknown: 'Two are taken: out and back.',
    aliases: 'strokes|strokes per visit|operations|cycles per visit|hübe|courses|maniobras'.split('|'),
    reading: { kind: 'count', low: 1, high: 1000 },
  },
  {
    name: 'valve_type',
    label: 'Valve type',
    group: 'valve',
    example: 'gate',
    help: 'The kind of valve.',
    howToMeasure:
      'Look at the body: a high bonnet is a gate valve, a flat body with a quarter-turn gearbox a butterfly valve.',
    unknown: 'A wide range of kinds must be planned for, and the turns stay a guess.',
    aliases:
      'valve type|valvetype|type of valve|type|kind|valve kind|valve description|valve style|subtype|facility type|facilitytype|asset type|asset class|armaturentyp|armaturenart|typ|art|bauart|type de vanne|type vanne|tipo|tipo de valvula|tipo válvula|tipo di valvola|tipo valvola|soort|afsluiter|тип|тип арматуры|类型|阀门类型'.split(
        '|',
      ),
    reading: choiceReading('valve type'),
  },
  {
    name: 'action',
    label: 'Action',
    group: 'valve',
    example: 'direct',
    help: 'Direct closes the usual way; reverse opens where others close.',
    unknown: 'Direct is taken.',
    aliases: 'action|acting|wirkrichtung|direct reverse|operating action'.split('|'),
    reading: choiceReading('action'),
  },
  {
    name: 'size',
    label: 'Size',
    group: 'valve',
    example: 'DN 150',
    help: 'Nominal size of the valve, as DN, inches or millimetres.',
    howToMeasure: 'Cast on the body; else measure round the pipe and divide by 3.14.',
    unknown: 'Torque and turns cannot be bounded usefully; the valve cannot be priced without a guess.',
    aliases:
      'size|valve size|valve_size|dn|dn mm|dn_mm|nominal size|nominal diameter|nominal bore|nb|nps|bore|valve dia|valve diameter|diameter|diameter_n|dia|diam|nennweite|größe|groesse|durchmesser|diamètre|diametre|diámetro|diametro|diâmetro|diametro nominale|taille|tamaño|tamano|tamanho|doorlaat|средний диаметр|диаметр|ду|口径|通径'.split(
        '|',
      ),
    reading: { kind: 'size' },
  },
  {
    name: 'rating',
    label: 'Rating',
    group: 'valve',
    example: 'PN 16',
    help: 'Pressure class of the valve: PN, Class, or K on ships.',
    howToMeasure: 'Cast on the body or stamped on the flange.',
    unknown: 'A common class is taken for tables of stem and wheel.',
    aliases:
      'rating|pressure rating|pressurerating|pressure class|class|pn|pn_bar|pn bar|flange rating|nenndruck|druckstufe|pression nominale|classe|presion nominal|clase|classe de pressão|pressione nominale|ру|давление номинальное|压力等级'.split(
        '|',
      ),
    reading: { kind: 'rating' },
  },
  {
    name: 'line_pressure',
    label: 'Line pressure',
    group: 'process',
    example: '6 bar',
    help: 'Pressure in the line, above the air around.',
    howToMeasure: 'Gauge nearby, or the pump head.',
    unknown: 'The rating is taken as the pressure, which makes everything heavier.',
    aliases:
      'line pressure|pressure|operating pressure|working pressure|max pressure|service pressure|static pressure|betriebsdruck|druck|pression|pression de service|presión|presion|presión de trabajo|pressão|pressione|рабочее давление|压力'.split(
        '|',
      ),
    reading: quantityReading({ dimension: 'pressure', bareUnits: ['bar'], ...usualRange('line_pressure') }),
  },
  {
    name: 'differential_pressure',
    label: 'Differential pressure',
    group: 'process',
    example: '2 bar',
    help: 'Pressure across the closed valve when it is moved.',
    howToMeasure: 'Gauges on both sides; the difference.',
    unknown: 'The whole line pressure is taken across the valve.',
    aliases:
      'differential pressure|dp|delta p|Δp|diff pressure|differenzdruck|pression différentielle|presión diferencial|pressão diferencial|перепад давления|压差'.split(
        '|',
      ),
    reading: quantityReading({ dimension: 'pressure', bareUnits: ['bar'], ...usualRange('differential_pressure') }),
  },
  {
    name: 'flowing',
    label: 'Flowing',
    group: 'process',
    example: 'still',
    help: 'Whether the line flows while the valve is moved.',
    unknown: 'Flow is taken, and the speed stays low.',
    aliases: 'flowing|flow|flow condition|in flow|durchfluss|débit|caudal|flusso'.split('|'),
    reading: choiceReading('flowing'),
  },
  {
    name: 'medium',
    label: 'Medium',
    group: 'process',
    example: 'water',
    help: 'What is in the line.',
    unknown: 'Water is taken.',
    aliases:
      'medium|media|fluid|product|content|service fluid|mediumart|fluide|produit|fluido|produto|prodotto|среда|介质'.split(
        '|',
      ),
    reading: { kind: 'text' },
  },
  {
    name: 'temperature',
    label: 'Temperature',
    group: 'process',
    example: '15 °C',
    help: 'Temperature of the medium.',
    howToMeasure: 'Local thermometer or the process data.',
    unknown: 'That of the place is taken; hot valves bind and burn.',
    aliases:
      'temperature|temp|operating temperature|design temperature|temperatur|température|temperatura|температура|温度'.split(
        '|',
      ),
    reading: quantityReading({ dimension: 'temperature', bareUnits: ['°C'], ...usualRange('temperature') }),
  },
  {
    name: 'age',
    label: 'Age',
    group: 'state',
    example: '1987',
    help: 'How old the valve is in years, or the year it was put in.',
    howToMeasure: 'Date on the body or the records.',
    unknown: 'Old and stiff is planned for.',
    aliases:
      'age|year|install year|installation year|installdate|install date|installation date|year installed|year built|baujahr|alter|einbaujahr|année|annee|année de pose|año|ano|anno|год|год установки|年份'.split(
        '|',
      ),
    reading: { kind: 'years', low: 0, high: 200 },
  },
  {
    name: 'last_operated',
    label: 'Last operated',
    group: 'state',
    example: '2 years',
    help: 'Years since the valve was last moved, or the year.',
    howToMeasure: 'Ask the person who turns it.',
    unknown: 'Not moved for years is taken, with a high first torque.',
    aliases:
      'last operated|last operation|last exercised|lastoperated|last moved|last turned|zuletzt betätigt|dernière manœuvre|última maniobra|ultima manobra|ultima manovra'.split(
        '|',
      ),
    reading: { kind: 'years', low: 0, high: 200 },
  },
  {
    name: 'condition',
    label: 'Condition',
    group: 'state',
    example: 'free',
    help: 'free, stiff or seized.',
    howToMeasure: 'Try by hand.',
    unknown: 'Stiff is planned for.',
    aliases:
      'condition|state|operability|operable|ease of operation|zustand|gängigkeit|état|estado|condição|condizione|состояние|状态'.split(
        '|',
      ),
    reading: choiceReading('condition'),
  },
  {
    name: 'position',
    label: 'Position now',
    group: 'state',
    example: 'open',
    help: 'Where the valve stands now: open, closed, or how far.',
    howToMeasure: 'Stem, indicator, or count the turns.',
    unknown: 'The sheet leaves a blank and the crew finds out.',
    aliases:
      'position|current position|currently open|currentlyopen|present position|stellung|position actuelle|posición|posição|posizione|положение'.split(
        '|',
      ),
    reading: { kind: 'text' },
  },
  {
    name: 'normal_position',
    label: 'Normal position',
    group: 'state',
    example: 'open',
    help: 'Where the valve stands in normal service.',
    unknown: 'Open is common; nobody relies on it.',
    aliases:
      'normal position|normally open|normallyopen|normal status|normal state|no/nc|ruhestellung|position normale|posición normal'.split(
        '|',
      ),
    reading: choiceReading('normal position'),
  },
  {
    name: 'leave_at',
    label: 'Leave at',
    group: 'state',
    example: 'as found',
    help: 'Where the valve is to be left after the work.',
    unknown: 'As found is taken.',
    aliases: 'leave at|leave|final position|left|end position|endstellung'.split('|'),
    reading: { kind: 'text' },
  },
  {
    name: 'bypass',
    label: 'By-pass',
    group: 'state',
    example: 'no',
    help: 'Whether there is a by-pass that equalises the pressure.',
    howToMeasure: 'A small line with its own valve round the body.',
    unknown: 'None is taken.',
    aliases: 'bypass|by-pass|by pass|umgehung|contournement|derivación'.split('|'),
    reading: { kind: 'yes-no' },
  },
  {
    name: 'locked',
    label: 'Locked',
    group: 'state',
    example: 'no',
    help: 'Whether the valve is locked or isolated by someone; it is then never moved.',
    unknown: 'The crew looks and asks.',
    aliases: 'locked|lock|lock status|isolated|tagged out|verriegelt|verrouillé|bloqueado|bloccato'.split('|'),
    reading: { kind: 'yes-no' },
  },
];
