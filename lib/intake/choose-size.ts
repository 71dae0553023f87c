/*
 * Decides the size of a valve from the size column and the remark.
 * Invariant: the column beats the remark; a remark that disagrees stays visible as a problem; no size is a size unknown.
 * Not here: reading the two (read-size.ts, remark-sizes.ts).
 * Read next: read-line.ts.
 */
import { type Known, known, type Origin } from '#lib/units/known-value.ts';
import { type CellContext, cellText, originOf, report } from './cell-context.ts';
import { quoted } from './plain-text.ts';
import { reportImplausible, reportUnreadable } from './read-cell.ts';
import type { Remark } from './read-remark.ts';
import { type ReadSize, readSizeText, SIZE_MM } from './read-size.ts';
import type { RemarkSize } from './remark-sizes.ts';

export function chooseSize(context: CellContext, remark: Remark | null): Known<'m'> | undefined {
  const column = readColumn(context);
  const own = (remark?.sizes ?? []).filter((size) => size.of !== 'other pipe');
  if (column === undefined) return remark === null ? undefined : fromRemark({ context, sizes: own, remark });
  const confirmed = own.some(
    (size) => size.of !== 'pipe' && size.low <= column.nominal && column.nominal <= size.high && isOneOf(size, column),
  );
  reportColumn({ context, column, confirmed });
  if (remark !== null) compare({ context, column, sizes: own, remark });
  return sizeOf(column, columnOrigin({ context, column, confirmed }));
}

function isOneOf(size: RemarkSize, column: ReadSize): boolean {
  return size.low === column.nominal || size.high === column.nominal;
}

function readColumn(context: CellContext): ReadSize | undefined {
  const text = cellText(context, 'size');
  if (text === undefined) return undefined;
  const read = readSizeText(text);
  if (read.kind === 'size') return read;
  if (read.kind === 'implausible') reportImplausible(context, 'size', `DN ${SIZE_MM.low} to DN ${SIZE_MM.high}`);
  else reportUnreadable(context, 'size', text);
  return undefined;
}

function columnOrigin(parts: {
  readonly context: CellContext;
  readonly column: ReadSize;
  readonly confirmed: boolean;
}): Origin {
  const { context, column, confirmed } = parts;
  const origin = originOf(context, 'size');
  if (column.doubts.includes('outside diameter')) {
    return {
      ...origin,
      source: `${origin.source} That is an outside diameter of pipe; the valve in it is usually DN ${column.nominal} (ISO 161-1, ISO 4200).`,
    };
  }
  if (column.doubts.includes('not nominal') && !confirmed && origin.basis === 'stated') {
    return {
      basis: 'assumed',
      source: `${origin.source} No valve is made in that size; DN ${column.nominal} is taken.`,
    };
  }
  return column.doubts.includes('two values')
    ? { ...origin, source: `${origin.source} Two sizes are named; both are planned for.` }
    : origin;
}

function reportColumn(parts: {
  readonly context: CellContext;
  readonly column: ReadSize;
  readonly confirmed: boolean;
}): void {
  const { context, column } = parts;
  const text = quoted(context.cells.size ?? '');
  for (const doubt of column.doubts) {
    switch (doubt) {
      case 'inches guessed':
      case 'metres guessed': {
        const unit = doubt === 'inches guessed' ? 'inches' : 'metres';
        report(context, {
          code: 'unit-guessed',
          column: 'size',
          sentence: `Size ${text} has no unit; it makes sense in ${unit} only and is read as DN ${column.nominal}.`,
          remedy: 'Write the unit after the number.',
        });
        break;
      }
      case 'not nominal':
        report(context, {
          code: 'size-not-nominal',
          column: 'size',
          sentence: `No valve is made in size ${text}; DN ${column.nominal} is taken.`,
          remedy: 'Read the size cast on the body.',
        });
        break;
      case 'outside diameter':
        report(context, {
          code: 'size-outside-diameter',
          column: 'size',
          severity: 'note',
          sentence: `Size ${text} is an outside diameter of pipe; the valve in it is usually DN ${column.nominal}, at most DN ${column.high}.`,
          remedy: 'Read the size cast on the body.',
        });
        break;
      case 'two values':
        report(context, {
          code: 'size-two-values',
          column: 'size',
          sentence: `Size ${text} names two sizes, as for a reducing tee; DN ${column.low} to DN ${column.high} is planned for, DN ${column.nominal} as the likelier.`,
          remedy: 'Say which of the two is the valve’s.',
        });
        break;
      case 'number ambiguous':
        report(context, {
          code: 'number-ambiguous',
          column: 'size',
          sentence: `The comma in ${text} may part thousands or decimals; it is read as DN ${column.nominal}.`,
          remedy: 'Write the number without a thousands mark.',
        });
        break;
    }
  }
}

/** A remark that names another size than the column stays visible; the pipe it branches from is not another size. */
function compare(parts: {
  readonly context: CellContext;
  readonly column: ReadSize;
  readonly sizes: readonly RemarkSize[];
  readonly remark: Remark;
}): void {
  const { context, column, sizes, remark } = parts;
  const spoken = sizes.filter((size) => size.of !== 'pipe');
  const agreeing = spoken.filter((size) => isOneOf(size, column));
  const tee = agreeing.find((size) => size.of === 'two sizes');
  if (tee !== undefined) {
    report(context, {
      code: 'size-two-values',
      column: 'size',
      severity: 'note',
      sentence: `The remark ${quoted(remark.text)} names a tee or reducer DN ${tee.high} × DN ${tee.low}; the size column says DN ${column.nominal}, which is its ${column.nominal === tee.low ? 'smaller' : 'larger'} side.`,
      remedy: 'Check on site which side the valve is on.',
    });
  }
  const other = spoken[0];
  if (agreeing.length > 0 || other === undefined) return;
  const said = other.low === other.high ? `DN ${other.low}` : `DN ${other.high} × DN ${other.low}`;
  report(context, {
    code: 'size-remark-disagrees',
    column: 'size',
    sentence: `The size column says DN ${column.nominal}, the remark ${quoted(remark.text)} says ${said}; the column is taken.`,
    remedy: 'Ask, or read the size cast on the body.',
  });
}

/** Without a size column: the valve’s own size, else the line it is on, else a tee’s two sizes, else the pipe’s. */
function fromRemark(parts: {
  readonly context: CellContext;
  readonly sizes: readonly RemarkSize[];
  readonly remark: Remark;
}): Known<'m'> | undefined {
  const { context, sizes, remark } = parts;
  const best = (['valve', 'line', 'two sizes', 'pipe'] as const)
    .map((of) => sizes.find((size) => size.of === of))
    .find((size) => size !== undefined);
  if (best === undefined) return undefined;
  const from = quoted(best.of === 'pipe' ? best.text : remark.text);
  if (best.of === 'pipe') {
    report(context, {
      code: 'size-from-pipe',
      column: 'size',
      sentence: `No size is given; the pipe’s, DN ${best.low}, is taken from ${from}.`,
      remedy: 'Read the size cast on the body.',
    });
    return sizeOf(
      { low: best.low, nominal: best.low, high: best.high },
      { basis: 'assumed', source: `No size is given; the pipe’s is taken, from ${from}.` },
    );
  }
  if (best.of === 'two sizes') {
    report(context, {
      code: 'size-two-values',
      column: 'size',
      sentence: `No size is given and the remark ${from} names two, as for a reducing tee; DN ${best.low} to DN ${best.high} is planned for, the smaller as the likelier.`,
      remedy: 'Say which of the two is the valve’s.',
    });
  }
  return sizeOf(
    { low: best.low, nominal: best.low, high: best.high },
    { basis: 'stated', source: `Read from the remark ${from}.` },
  );
}

function sizeOf(
  size: { readonly low: number; readonly nominal: number; readonly high: number },
  origin: Origin,
): Known<'m'> {
  return known('m', { low: size.low / 1000, nominal: size.nominal / 1000, high: size.high / 1000 }, origin);
}
