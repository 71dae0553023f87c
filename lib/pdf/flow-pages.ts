/*
 * Shares out what flows down a paper over its pages.
 * Invariant: every piece stands on exactly one page, in order; a table's head stands on every page that its rows reach.
 * Not here: drawing (render-paper.ts).
 * Read next: block-pieces.ts.
 */
import type { Flow, Piece, TableFlow } from './pieces.ts';
import { CONTENT_HEIGHT, PAGE } from './styles.ts';

export interface Placed {
  readonly piece: Piece;
  readonly y: number;
}

export type PlacedPage = readonly Placed[];

interface Sheet {
  readonly pages: Placed[][];
  y: number;
}

export function flowPages(flows: readonly Flow[]): readonly PlacedPage[] {
  const sheet: Sheet = { pages: [[]], y: 0 };
  flows.forEach((flow, index) => {
    const follows = () => heightAhead(flows.slice(index + 1, index + 1 + MOST_LOOKED_AT));
    if (flow.kind === 'page break') startPage(sheet);
    else if (flow.kind === 'table') placeTable(sheet, flow.table);
    else placePiece(sheet, flow.piece, follows);
  });
  const last = sheet.pages.at(-1);
  return last !== undefined && last.length === 0 && sheet.pages.length > 1 ? sheet.pages.slice(0, -1) : sheet.pages;
}

/** How many flows after a heading may matter for where it stands. */
const MOST_LOOKED_AT = 40;

/** Heights of what follows, piece by piece, as far as a page goes. */
function heightAhead(flows: readonly Flow[]): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const flow of flows) {
    if (flow.kind === 'page break') break;
    if (flow.kind === 'piece') pieces.push(flow.piece);
    else pieces.push(flow.table.head, ...flow.table.rows.slice(0, MOST_LOOKED_AT));
  }
  return pieces;
}

/** Room that a piece needs: its own height, and what must stand below it on the same page. */
function needed(piece: Piece, following: readonly Piece[]): number {
  if (piece.ahead === undefined) return piece.height;
  const [next, ...rest] = following;
  if (next === undefined) return piece.height;
  let room = needed(next, rest);
  for (const more of rest) {
    if (room >= piece.ahead) break;
    room += more.height;
  }
  return piece.height + Math.max(needed(next, rest), Math.min(room, piece.ahead));
}

function placePiece(sheet: Sheet, piece: Piece, following: () => readonly Piece[]): void {
  const room = piece.ahead === undefined ? piece.height : Math.min(needed(piece, following()), CONTENT_HEIGHT);
  if (sheet.y > 0 && sheet.y + room > CONTENT_HEIGHT) startPage(sheet);
  put(sheet, piece);
}

function placeTable(sheet: Sheet, { head, rows, after }: TableFlow): void {
  placePiece(sheet, head, () => rows);
  rows.forEach((row, index) => {
    const room = row.ahead === undefined ? row.height : needed(row, rows.slice(index + 1, index + 4));
    if (sheet.y + room > CONTENT_HEIGHT) {
      startPage(sheet);
      put(sheet, head);
    }
    put(sheet, row);
  });
  sheet.y += after;
}

function put(sheet: Sheet, piece: Piece): void {
  sheet.pages.at(-1)?.push({ piece, y: PAGE.top + sheet.y });
  sheet.y += piece.height;
}

function startPage(sheet: Sheet): void {
  if (sheet.pages.at(-1)?.length === 0) return;
  sheet.pages.push([]);
  sheet.y = 0;
}
