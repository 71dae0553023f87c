/*
 * A drawing as a self-contained SVG text: roles become classes, colours come from CSS variables with a printable default.
 * Invariant: the same drawing gives the same text; every text is escaped.
 * Not here: the PDF's drawing of the same geometry (pdf).
 * Read next: drawing.ts.
 */

import { PAPER_COLOURS } from '#lib/documents/papers/paper-colours.ts';
import { DASHES, type Drawing, LINE_WEIGHTS, PAINT_ROLES, type PaintRole, type Shape } from './drawing.ts';
import { tidy } from './shapes.ts';

/** Roles as CSS: `--kw-needed` and so on may be set by a theme. */
export function drawingCss(): string {
  return PAINT_ROLES.flatMap((role) => [
    `.kw-fill-${role}{fill:${colour(role)}}`,
    `.kw-line-${role}{stroke:${colour(role)}}`,
  ]).join('');
}

export function drawingToSvg(drawing: Drawing, id = 'drawing'): string {
  const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${tidy(drawing.width)} ${tidy(drawing.height)}" role="img" aria-labelledby="${id}-title ${id}-description" font-family="'Source Sans 3','Noto Sans',sans-serif">`;
  const told = `<title id="${id}-title">${escaped(drawing.title)}</title><desc id="${id}-description">${escaped(drawing.description)}</desc>`;
  return `${head}${told}<style>${drawingCss()}</style>${drawing.shapes.map(shapeToSvg).join('')}</svg>`;
}

function shapeToSvg(shape: Shape): string {
  switch (shape.kind) {
    case 'rect':
      return `<rect x="${tidy(shape.x)}" y="${tidy(shape.y)}" width="${tidy(shape.width)}" height="${tidy(shape.height)}"${shape.radius === undefined ? '' : ` rx="${tidy(shape.radius)}"`}${inked(shape)}/>`;
    case 'line':
      return `<line x1="${tidy(shape.from.x)}" y1="${tidy(shape.from.y)}" x2="${tidy(shape.to.x)}" y2="${tidy(shape.to.y)}"${inked(shape)}/>`;
    case 'path':
      return `<path d="${shape.d}"${inked(shape)}/>`;
    case 'circle':
      return `<circle cx="${tidy(shape.centre.x)}" cy="${tidy(shape.centre.y)}" r="${tidy(shape.radius)}"${inked(shape)}/>`;
    case 'text':
      return `<text x="${tidy(shape.at.x)}" y="${tidy(shape.at.y)}" font-size="${tidy(shape.size)}" text-anchor="${shape.anchor}"${shape.bold ? ' font-weight="600"' : ''} class="kw-fill-${shape.role}">${escaped(shape.text)}</text>`;
  }
}

function inked(shape: Exclude<Shape, { kind: 'text' }>): string {
  const classes = [
    shape.fill === undefined ? '' : `kw-fill-${shape.fill}`,
    shape.stroke === undefined ? '' : `kw-line-${shape.stroke}`,
  ]
    .filter((name) => name !== '')
    .join(' ');
  const noFill = shape.fill === undefined ? ' fill="none"' : '';
  const line =
    shape.stroke === undefined
      ? ''
      : ` stroke-width="${LINE_WEIGHTS[shape.weight ?? 'thin']}" stroke-linejoin="round" stroke-linecap="round"${shape.dash === undefined ? '' : ` stroke-dasharray="${DASHES[shape.dash]}"`}`;
  return ` class="${classes}"${noFill}${line}`;
}

function colour(role: PaintRole): string {
  return `var(--kw-${role}, ${PAPER_COLOURS[role]})`;
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}
