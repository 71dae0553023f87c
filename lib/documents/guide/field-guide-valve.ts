/*
 * Field guide: what the valve is called, what it is, what is in it and the state it is in.
 * Invariant: one entry a column, in the order of the template.
 * Not here: the short help (lib/intake/columns-valve.ts).
 * Read next: field-guide.ts.
 */
import { CAUTIONS, type GuideEntry } from './field-guide-entry.ts';

export const VALVE_GUIDE: readonly GuideEntry[] = [
  {
    field: 'tag',
    widens: ['paper'],
    measure: [
      'Read the plate on the valve, not the drawing.',
      'Where there is none, write what people there call it and mark it on the photo.',
    ],
  },
  {
    field: 'location',
    widens: ['time', 'paper'],
    measure: [
      'Write it so that a stranger finds it: street and corner, deck and frame, unit and level.',
      'Add coordinates for anything in the ground.',
    ],
  },
  {
    field: 'place_order',
    widens: ['paper'],
    measure: [
      'Number the valves in the order in which they are to be worked, 1 first.',
      'Leave it blank where the order does not matter.',
    ],
  },
  {
    field: 'access_minutes',
    widens: ['time'],
    measure: [
      'Think through the last visit: permit, cover, pumping out, climbing, opening a cage.',
      'Write the minutes before the first tool touched the valve.',
    ],
  },
  {
    field: 'qty',
    widens: ['time', 'parts'],
    measure: [
      'Count valves that are alike in everything on this line.',
      'Give a valve that differs in anything a line of its own.',
    ],
  },
  {
    field: 'strokes',
    widens: ['time', 'power'],
    measure: [
      'Count full travels: closing and opening again is 2.',
      'To work it in, count each travel of the programme.',
    ],
  },
  {
    field: 'valve_type',
    widens: ['torque', 'turns', 'never'],
    picture: 'valve-kinds',
    measure: [
      'A high bonnet and a flat body: gate. A round, bulging body: globe. A thin body between flanges with a gearbox: butterfly.',
      'A frame and a plate in a wall or channel: penstock. Look also at the type plate.',
    ],
  },
  {
    field: 'action',
    widens: ['paper'],
    measure: [
      'Ask what happens when the stem goes down. It shuts: direct. It opens: reverse.',
      'On a penstock look whether the plate goes up or down to open.',
    ],
  },
  {
    field: 'size',
    widens: ['torque', 'turns', 'never', 'parts'],
    picture: 'pipe-round',
    measure: [
      'Read it off the body: DN or inches, raised in the casting.',
      'Else lay a tape round the bare pipe beside the valve and divide by 3.14: that is the outside diameter; a table of pipes gives the nominal size.',
    ],
  },
  {
    field: 'rating',
    widens: ['torque'],
    picture: 'body-marks',
    measure: [
      'Read it off the body or the rim of the flange: PN 16, Class 150, 10K.',
      'Counting the flange bolts narrows it where nothing can be read.',
    ],
  },
  {
    field: 'line_pressure',
    widens: ['torque'],
    picture: 'pressures',
    measure: [
      'Read the nearest gauge on the same side and correct for height: 10 m of water is about 1 bar.',
      'Else ask for the pump head or the reservoir level.',
    ],
    caution: CAUTIONS.pressure,
  },
  {
    field: 'differential_pressure',
    widens: ['torque'],
    picture: 'pressures',
    measure: [
      'Read both sides of the closed valve at the same time and subtract.',
      'Write the worst moment of the work, not the usual one: the first opening against an empty side is the whole pressure.',
    ],
    caution: CAUTIONS.pressure,
  },
  {
    field: 'flowing',
    widens: ['speed'],
    measure: ['Ask whether anything runs while the valve is moved.', 'Still means still for the whole stroke.'],
  },
  {
    field: 'medium',
    widens: ['place'],
    measure: [
      'Read the pipe’s colour band and label, then ask: labels outlive contents.',
      'Say if solids, scale or gas come with it.',
    ],
  },
  {
    field: 'temperature',
    widens: ['torque', 'place'],
    measure: [
      'Read the local thermometer or the process data.',
      'Say also whether it is much hotter or colder than when the valve was last moved.',
    ],
    caution: CAUTIONS.hot,
  },
  {
    field: 'age',
    widens: ['torque', 'never'],
    measure: ['Look for a year in the casting or on the plate.', 'Else take the year of the pipeline.'],
  },
  {
    field: 'last_operated',
    widens: ['torque'],
    measure: [
      'Ask the person who turns it, not the one who owns it.',
      'Write never where it was not moved since it was built.',
    ],
  },
  {
    field: 'condition',
    widens: ['torque', 'time'],
    measure: [
      'Try by hand, both ways, an eighth of a turn, with the wheel’s own length and no bar.',
      'It goes with two hands: free. Only with all your weight: stiff. Not at all: seized.',
    ],
    caution: `${CAUTIONS.move} ${CAUTIONS.pinch}`,
  },
  {
    field: 'position',
    widens: ['paper'],
    picture: 'open-closed',
    measure: [
      'A rising stem: long above the wheel is open, short is closed.',
      'An indicator: read it, and say that you did not see the stem.',
    ],
  },
  {
    field: 'normal_position',
    widens: ['paper'],
    measure: ['Ask the control room or read the flow diagram.'],
  },
  {
    field: 'leave_at',
    widens: ['paper'],
    measure: [
      'Agree it with whoever runs the line, in writing.',
      'Give it as open, closed, as found, or so many turns from closed.',
    ],
  },
  {
    field: 'bypass',
    widens: ['torque'],
    picture: 'by-pass',
    measure: [
      'Look for a small line with its own valve round the body.',
      'Say whether it still works, if anybody knows.',
    ],
    caution: 'Look only: opening a by-pass lets the line flow.',
  },
  {
    field: 'locked',
    widens: ['place', 'paper'],
    measure: ['Look for a lock, chain or tag, and write whose it is.'],
    caution: CAUTIONS.locked,
  },
];
