/** A cell by its row under the filter and its column as shown. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Cells chosen together: from where it began to where it reaches. */
export interface Block {
  readonly anchor: Place;
  readonly head: Place;
}

export interface Span {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

export function spanOf({ anchor, head }: Block): Span {
  return {
    top: Math.min(anchor.row, head.row),
    bottom: Math.max(anchor.row, head.row),
    left: Math.min(anchor.column, head.column),
    right: Math.max(anchor.column, head.column),
  };
}

export function isMany(block: Block): boolean {
  const { top, bottom, left, right } = spanOf(block);
  return bottom > top || right > left;
}

/** A place that is there. */
export function within(place: Place, size: Place): Place {
  return {
    row: Math.max(0, Math.min(place.row, size.row - 1)),
    column: Math.max(0, Math.min(place.column, size.column - 1)),
  };
}

interface KeyPressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** Where a walking key leads from a place; nothing for other keys. */
export function stepTo(
  from: Place,
  event: KeyPressed,
  { size, page }: { readonly size: Place; readonly page: number },
) {
  const far = event.ctrlKey || event.metaKey;
  const to = {
    ArrowDown: { row: far ? size.row : from.row + 1, column: from.column },
    ArrowUp: { row: far ? 0 : from.row - 1, column: from.column },
    ArrowLeft: { row: from.row, column: far ? 0 : from.column - 1 },
    ArrowRight: { row: from.row, column: far ? size.column : from.column + 1 },
    PageDown: { row: from.row + page, column: from.column },
    PageUp: { row: from.row - page, column: from.column },
    Home: { row: far ? 0 : from.row, column: 0 },
    End: { row: far ? size.row : from.row, column: size.column },
  }[event.key];
  return to && within(to, size);
}
