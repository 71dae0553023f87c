/*
 * The torque ladder: what a valve needs, where the limiter may stand, what the chain carries and what the valve must never see, on one scale.
 * Invariant: opening and closing stand apart on the same scale; no two labels overlap; hatching tells what colour tells.
 * Not here: which values are shown and their words (ladder-marks.ts).
 * Read next: ladder-marks.ts, torque-scale.ts.
 */
import type { Drawing, PaintRole, Shape } from './drawing.ts';
import { rungsBefore } from './ladder-before.ts';
import {
  chainMarks,
  type DirectionMarks,
  directionMarks,
  type LadderSubject,
  lettering,
  type Mark,
} from './ladder-marks.ts';
import { neededHeight, placeLabels } from './place-labels.ts';
import { circle, hatch, line, point, polygon, polyline, rect, text } from './shapes.ts';
import { wrapText } from './text-width.ts';
import { type TorqueScale, torqueScale } from './torque-scale.ts';

const WIDTH = 520;
const AXIS = 40;
const TOP = 30;
const BOTTOM = 26;
const BASE_PLOT = 212;
const LANES = 66;
const CHAIN_LANES = 30;
const LEADER = 16;
const SIZE = 7;
const LINE_HEIGHT = 8.2;
const GAP = 2.6;

/** Marks above this multiple of what the valve needs and may see are pinned to the top with an arrow. */
const TOP_OF_SCALE = 3;

export function torqueLadder(subject: LadderSubject): Drawing {
  const letter = lettering(subject);
  const sides = [directionMarks(subject, 'opening'), directionMarks(subject, 'closing')].map(({ labels, ...side }) => ({
    ...side,
    labels: labels.map((mark) => ({ ...mark, words: letter(mark.words) })),
  }));
  const before = sidesBefore(subject);
  const chain = chainMarks(subject).map((mark) => ({ ...mark, words: letter(mark.words) }));
  const scale = scaleFor({ sides: [...sides, ...before], chain, system: subject.system });
  const widths = chain.length > 0 ? [174, 174, 132] : [240, 240];
  const columns = widths.map((width, index) => ({
    x: AXIS + widths.slice(0, index).reduce((sum, w) => sum + w, 0),
    width,
  }));
  const panels = columns.map((column, index) =>
    preparePanel({ column, side: sides[index] ?? null, before: before[index] ?? null, chain }),
  );
  const plot = Math.max(BASE_PLOT, ...panels.map((panel) => neededHeight(panel.labels.map(labelHeight), GAP)));
  const notes = footNotes({ scale, sides, compared: before.length > 0 });
  const y = (torque: number) => TOP + plot * (1 - scale.share(torque));
  const shapes: Shape[] = [...frame({ scale, plot, y, panels })];
  for (const panel of panels) {
    shapes.push(
      ...(panel.side === null
        ? chainLane({ panel, y, chain, letter })
        : directionLanes({ panel, side: panel.side, y, plot, letter })),
    );
    shapes.push(...labelsOf({ panel, y, plot, scale }));
  }
  notes.forEach((note, index) => {
    shapes.push(
      text(point(AXIS, TOP + plot + BOTTOM + index * 9), letter(note.words), { size: SIZE, role: note.role }),
    );
  });
  return {
    width: WIDTH,
    height: TOP + plot + BOTTOM + notes.length * 9,
    title: letter(`Torque ladder of ${subject.duty.tag}`),
    description: described({ sides, chain, letter }),
    shapes,
  };
}

type Letter = (words: string) => string;

function sidesBefore({ before, system }: LadderSubject): readonly DirectionMarks[] {
  if (before === undefined) return [];
  return [directionMarks({ duty: before, system }, 'opening'), directionMarks({ duty: before, system }, 'closing')];
}

interface PanelLabel {
  readonly mark: Mark;
  readonly lines: readonly string[];
}

interface Panel {
  readonly x: number;
  readonly width: number;
  readonly lanes: number;
  readonly side: DirectionMarks | null;
  readonly before: DirectionMarks | null;
  readonly labels: readonly PanelLabel[];
}

function preparePanel(asked: {
  readonly column: { readonly x: number; readonly width: number };
  readonly side: DirectionMarks | null;
  readonly before: DirectionMarks | null;
  readonly chain: readonly Mark[];
}): Panel {
  const lanes = asked.side === null ? CHAIN_LANES : LANES;
  const room = asked.column.width - lanes - LEADER - 8;
  const marks = asked.side?.labels ?? asked.chain;
  const labels = marks.map((mark) => ({
    mark,
    lines: wrapText(mark.words, { size: SIZE, bold: mark.bold, width: room, maxLines: 4 }),
  }));
  return { ...asked.column, lanes, side: asked.side, before: asked.before, labels };
}

function labelHeight(label: PanelLabel): { readonly wanted: number; readonly height: number } {
  return { wanted: 0, height: label.lines.length * LINE_HEIGHT };
}

function scaleFor(asked: {
  readonly sides: readonly DirectionMarks[];
  readonly chain: readonly Mark[];
  readonly system: LadderSubject['system'];
}): TorqueScale {
  const needs = asked.sides.flatMap((side) => [
    Number(side.starting.high),
    Number(side.running.high),
    side.never,
    ...(side.window === null ? [] : [side.window.start, side.window.ceiling]),
  ]);
  const base = Math.max(...needs);
  const all = [
    ...needs,
    ...asked.sides.flatMap((side) => side.bounds.map((bound) => bound.torque)),
    ...asked.chain.map((mark) => mark.torque),
  ];
  const smallest = Math.min(
    ...asked.sides
      .flatMap((side) => [Number(side.running.nominal), Number(side.starting.nominal)])
      .filter((value) => value > 0),
    base,
  );
  return torqueScale({ values: all.filter((value) => value <= base * TOP_OF_SCALE), smallest, system: asked.system });
}

function frame(asked: {
  readonly panels: readonly Panel[];
  readonly scale: TorqueScale;
  readonly plot: number;
  readonly y: (torque: number) => number;
}): Shape[] {
  const { scale, plot, y, panels } = asked;
  const shapes: Shape[] = [];
  for (const tick of scale.ticks) {
    for (const panel of panels)
      shapes.push(
        line(point(panel.x + 3, y(tick.torque)), point(panel.x + panel.lanes, y(tick.torque)), {
          stroke: 'grid',
          weight: 'thin',
        }),
      );
    shapes.push(text(point(AXIS - 7, y(tick.torque) + 2.4), tick.label, { size: SIZE, anchor: 'end', role: 'muted' }));
  }
  shapes.push(line(point(AXIS, TOP), point(AXIS, TOP + plot), { stroke: 'axis', weight: 'wide' }));
  for (const tick of scale.ticks)
    shapes.push(
      line(point(AXIS - 4, y(tick.torque)), point(AXIS, y(tick.torque)), { stroke: 'axis', weight: 'medium' }),
    );
  shapes.push(text(point(AXIS - 7, TOP - 10), scale.unit, { size: SIZE, anchor: 'end', bold: true }));
  return shapes;
}

function directionLanes(asked: {
  readonly panel: Panel;
  readonly side: DirectionMarks;
  readonly y: (torque: number) => number;
  readonly plot: number;
  readonly letter: Letter;
}): Shape[] {
  const { panel, side, y, plot, letter } = asked;
  const left = panel.x + 6;
  const lane = { run: left + 2, start: left + 21, window: left + 40 };
  const shapes: Shape[] = [
    text(point(left, TOP - 10), letter(side.direction === 'opening' ? 'Opening' : 'Closing'), {
      size: 8.5,
      bold: true,
    }),
  ];
  const neverY = y(side.never);
  const neverBox = { x: left, y: TOP, width: panel.lanes - 6, height: Math.max(0.5, neverY - TOP) };
  shapes.push(hatch(neverBox, { pattern: 'falling', spacing: 4.2, stroke: 'never' }));
  for (const bound of side.bounds)
    if (y(bound.torque) > TOP + 0.01)
      shapes.push(
        line(point(left + panel.lanes - 14, y(bound.torque)), point(left + panel.lanes - 6, y(bound.torque)), {
          stroke: 'never',
          weight: 'medium',
        }),
      );
  shapes.push(...rangeBar({ known: side.running, x: lane.run, pattern: 'upright', y }));
  shapes.push(...rangeBar({ known: side.starting, x: lane.start, pattern: 'rising', y }));
  shapes.push(...windowBar({ side, x: lane.window, y }));
  shapes.push(line(point(left, neverY), point(left + panel.lanes - 6, neverY), { stroke: 'never', weight: 'heavy' }));
  if (panel.before !== null)
    shapes.push(...rungsBefore({ before: panel.before, now: side, lane, from: left, to: left + panel.lanes - 6, y }));
  const captions = [
    ['run', lane.run + 7],
    ['start', lane.start + 7],
    ['limiter', lane.window + 9],
  ] as const;
  for (const [words, x] of captions)
    shapes.push(text(point(x, TOP + plot + 9), letter(words), { size: 6, anchor: 'middle', role: 'muted' }));
  return shapes;
}

function rangeBar(bar: {
  readonly known: DirectionMarks['running'];
  readonly x: number;
  readonly pattern: 'upright' | 'rising';
  readonly y: (torque: number) => number;
}): Shape[] {
  const top = bar.y(bar.known.high);
  const height = Math.max(1.6, bar.y(bar.known.low) - top);
  const box = { x: bar.x, y: top, width: 14, height };
  const nominal = bar.y(bar.known.nominal);
  return [
    rect(box, { fill: 'paper', stroke: 'needed', weight: 'medium' }),
    hatch(box, { pattern: bar.pattern, spacing: 3, stroke: 'needed' }),
    line(point(bar.x - 1.5, nominal), point(bar.x + 15.5, nominal), { stroke: 'needed', weight: 'heavy' }),
  ];
}

function windowBar(bar: {
  readonly side: DirectionMarks;
  readonly x: number;
  readonly y: (torque: number) => number;
}): Shape[] {
  const { side, x, y } = bar;
  if (side.window === null || side.window.ceiling < side.window.start) {
    const middle = y((Number(side.starting.high) + side.never) / 2);
    return [
      polyline([point(x + 3, middle - 5), point(x + 13, middle + 5)], { stroke: 'warning', weight: 'wide' }),
      polyline([point(x + 13, middle - 5), point(x + 3, middle + 5)], { stroke: 'warning', weight: 'wide' }),
    ];
  }
  const top = y(side.window.ceiling);
  const bottom = y(side.window.start);
  return [
    rect(
      { x, y: top, width: 18, height: Math.max(1.6, bottom - top) },
      { fill: 'part', stroke: 'window', weight: 'medium' },
    ),
    line(point(x - 2, top), point(x + 20, top), { stroke: 'window', weight: 'heavy' }),
    polygon(
      [
        point(x + 9, Math.min(top + 3, bottom)),
        point(x + 5.5, Math.min(top + 8, bottom)),
        point(x + 12.5, Math.min(top + 8, bottom)),
      ],
      { fill: 'window' },
    ),
    line(point(x, bottom), point(x + 18, bottom), { stroke: 'window', weight: 'wide' }),
  ];
}

function chainLane(asked: {
  readonly panel: Panel;
  readonly y: (torque: number) => number;
  readonly chain: readonly Mark[];
  readonly letter: Letter;
}): Shape[] {
  const { panel, y, chain, letter } = asked;
  const x = panel.x + 8;
  const sure = chain[0]?.torque ?? 0;
  const stall = chain[1]?.torque ?? sure;
  const box = { x: x + 3, y: y(sure), width: 14, height: y(-Infinity) - y(sure) };
  const shapes: Shape[] = [
    text(point(x, TOP - 10), letter('Chain, at the valve'), { size: 8.5, bold: true }),
    rect(box, { fill: 'valve', stroke: 'capacity', weight: 'medium' }),
    hatch(box, { pattern: 'crossed', spacing: 5, stroke: 'grid' }),
    rect(
      { x: x + 3, y: y(stall), width: 14, height: Math.max(0.5, y(sure) - y(stall)) },
      { stroke: 'capacity', weight: 'medium', dash: 'dashed' },
    ),
  ];
  for (const mark of chain)
    shapes.push(
      line(point(x, y(mark.torque)), point(x + 20, y(mark.torque)), {
        stroke: mark.role === 'text' ? 'outline' : mark.role,
        weight: mark.bold ? 'wide' : 'medium',
      }),
    );
  return shapes;
}

function labelsOf(asked: {
  readonly panel: Panel;
  readonly y: (torque: number) => number;
  readonly plot: number;
  readonly scale: TorqueScale;
}): Shape[] {
  const { panel, y, plot, scale } = asked;
  const middles = placeLabels(
    panel.labels.map((label) => ({ wanted: y(label.mark.torque), height: label.lines.length * LINE_HEIGHT })),
    { from: TOP - 4, to: TOP + plot + 4, gap: GAP },
  );
  const from = panel.x + panel.lanes + 1;
  const to = panel.x + panel.lanes + LEADER;
  const shapes: Shape[] = [];
  panel.labels.forEach((label, index) => {
    const middle = middles[index] ?? 0;
    const target = y(label.mark.torque);
    const role: PaintRole = label.mark.role === 'text' ? 'axis' : label.mark.role;
    if (label.mark.torque > scale.to)
      shapes.push(
        polyline(
          [
            point(to - 4, middle + 3),
            point(to - 4, middle - 4),
            point(to - 6, middle - 1),
            point(to - 4, middle - 4),
            point(to - 2, middle - 1),
          ],
          { stroke: role, weight: 'thin' },
        ),
      );
    else {
      shapes.push(
        polyline([point(from, target), point(from + 3, target), point(to - 3, middle), point(to, middle)], {
          stroke: role,
          weight: 'hair',
        }),
      );
      shapes.push(circle(point(from, target), 0.9, { fill: role }));
    }
    const first = middle - (label.lines.length * LINE_HEIGHT) / 2 + SIZE * 0.83;
    label.lines.forEach((words, row) => {
      shapes.push(
        text(point(to + 2, first + row * LINE_HEIGHT), words, {
          size: SIZE,
          role: label.mark.role === 'needed' ? 'text' : label.mark.role,
          ...(label.mark.bold ? { bold: true } : {}),
        }),
      );
    });
  });
  return shapes;
}

function footNotes({
  scale,
  sides,
  compared,
}: {
  readonly scale: TorqueScale;
  readonly sides: readonly DirectionMarks[];
  readonly compared: boolean;
}): readonly { readonly words: string; readonly role: PaintRole }[] {
  const notes: { words: string; role: PaintRole }[] = [
    {
      words: `${scale.kind === 'linear' ? 'Even scale' : scale.kind === 'square root' ? 'Square-root scale' : 'Logarithmic scale'}; all torques at the wheel or nut; likely value as a thick line; an arrow means above the scale.`,
      role: 'muted',
    },
  ];
  if (compared) notes.push({ words: 'Dashed: where it stood before the change.', role: 'text' });
  if (sides.some((side) => side.running.low < 0))
    notes.push({
      words:
        'Running torque may be negative: the load can turn the stem by itself; never take the drive off under load.',
      role: 'warning',
    });
  return notes;
}

function described({
  sides,
  chain,
  letter,
}: {
  readonly sides: readonly DirectionMarks[];
  readonly chain: readonly Mark[];
  readonly letter: Letter;
}): string {
  const told = sides.map(
    (side) =>
      `${letter(side.direction === 'opening' ? 'Opening' : 'Closing')}: ${side.labels.map((label) => label.words.replace(/\u00a0/g, ' ')).join('; ')}.`,
  );
  return [
    ...told,
    ...(chain.length > 0
      ? [`${letter('Chain')}: ${chain.map((mark) => mark.words.replace(/\u00a0/g, ' ')).join('; ')}.`]
      : []),
  ].join(' ');
}
