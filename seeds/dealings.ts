/*
 * What went on in the demo house before the day on which it is loaded: three hires quoted, two of them out, one of those late, and an answer that is due.
 * Invariant: days are counted from that day; lists are a few valves each, so that they are worked out in a moment.
 * Not here: carrying it out (lib/services/house/demo-dealings.ts).
 * Read next: load.ts.
 */
export interface DemoDealing {
  readonly title: string;
  /** Code of a demo customer. */
  readonly customer: string;
  readonly place: string;
  readonly sources: readonly ('battery' | 'air' | 'petrol')[];
  readonly list: string;
  readonly days: number;
  /** Days from the day of loading, below zero before it. */
  readonly cameOn: number;
  readonly startsOn: number;
  /** Null where the answer is still due. */
  readonly outcome: 'out' | 'quoted' | null;
  readonly dueOn?: number;
}

const HEAD = 'tag,location,qty,valve_type,size,rating,line_pressure,driven_by,depth_to_nut,wheel_diameter,condition';

export const DEMO_DEALINGS: readonly DemoDealing[] = [
  {
    title: 'Spring flush at Tollgate',
    customer: 'C-1036',
    place: 'Tollgate chamber',
    sources: ['battery'],
    list: `${HEAD}\nTG-1,north chamber,2,gate,DN 100,PN 16,5 bar,key cap,0.9 m,,free\n`,
    days: 3,
    cameOn: -24,
    startsOn: -9,
    outcome: 'out',
  },
  {
    title: 'Zone valves at Cooper’s Reach',
    customer: 'C-1007',
    place: 'Cooper’s Reach',
    sources: ['battery', 'air'],
    list: `${HEAD}\nCR-1,weir side,2,gate,DN 150,PN 16,5 bar,key cap,1.1 m,,free\nCR-2,pump house,1,gate,DN 200,PN 16,5 bar,handwheel,,400 mm,free\n`,
    days: 12,
    cameOn: -17,
    startsOn: -7,
    outcome: 'out',
  },
  {
    title: 'Bypass valves for the summer draw-down',
    customer: 'C-1031',
    place: 'Lathe bypass',
    sources: ['battery'],
    list: `${HEAD}\nBP-1,gallery,2,gate,DN 150,PN 16,4 bar,handwheel,,350 mm,free\n`,
    days: 4,
    cameOn: -18,
    startsOn: 20,
    outcome: 'quoted',
  },
  {
    title: 'Two sluices before the regatta',
    customer: 'C-1044',
    place: 'Regatta basin',
    sources: ['battery', 'petrol'],
    list: `${HEAD}\nRB-1,east,1,gate,DN 200,PN 10,2 bar,handwheel,,450 mm,stiff\nRB-2,west,1,gate,DN 200,PN 10,2 bar,handwheel,,450 mm,stiff\n`,
    days: 2,
    cameOn: -2,
    startsOn: 16,
    outcome: null,
    dueOn: 1,
  },
];
