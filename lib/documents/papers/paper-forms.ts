/*
 * A whole paper in the date and number form of whom it goes to.
 * Invariant: addresses, document numbers and barcodes stay; nothing is added or left out.
 * Not here: what a date or figure looks like (../words/written-forms.ts).
 * Read next: ../words/written-forms.ts, paper.ts.
 */
import type { Drawing, Shape } from '#lib/documents/drawings/drawing.ts';
import { type WrittenForms, writer } from '#lib/documents/words/written-forms.ts';
import type { Block, LabelledText, Paper } from './paper.ts';

type Write = (words: string) => string;

export function paperInForms(
  paper: Paper,
  { forms, names }: { readonly forms: WrittenForms; readonly names: readonly string[] },
): Paper {
  return rewritten(paper, writer({ forms, names }));
}

/** Everything that a paper says, word by word through `write`; not who it is from and to. */
export function rewritten(paper: Paper, write: Write): Paper {
  return {
    ...paper,
    facts: paper.facts.map((fact) => factIn(fact, write)),
    foot: write(paper.foot),
    blocks: paper.blocks.map((block) => blockIn(block, write)),
  };
}

function factIn({ label, value }: LabelledText, write: Write): LabelledText {
  return { label: write(label), value: write(value) };
}

function blockIn(block: Block, write: Write): Block {
  switch (block.kind) {
    case 'heading':
    case 'text':
      return { ...block, text: write(block.text) };
    case 'facts':
      return { ...block, items: block.items.map((fact) => factIn(fact, write)) };
    case 'table':
      return tableIn(block, write);
    case 'list':
    case 'blanks':
      return { ...block, items: block.items.map(write) };
    case 'callout':
      return { ...block, title: write(block.title), items: block.items.map(write) };
    case 'drawing':
      return { ...block, drawing: drawingIn(block.drawing, write) };
    case 'pair':
      return {
        ...block,
        left: block.left.map((one) => blockIn(one, write)),
        right: block.right.map((one) => blockIn(one, write)),
      };
    case 'together':
      return { ...block, blocks: block.blocks.map((one) => blockIn(one, write)) };
    case 'signatures':
    case 'barcode':
    case 'page break':
      return block;
  }
}

function tableIn(table: Extract<Block, { kind: 'table' }>, write: Write): Block {
  const { caption } = table;
  return {
    ...table,
    ...(caption === undefined
      ? {}
      : {
          caption: {
            ...caption,
            text: write(caption.text),
            ...(caption.words === undefined ? {} : { words: write(caption.words) }),
          },
        }),
    columns: table.columns.map((column) => ({ ...column, label: write(column.label) })),
    rows: table.rows.map((row) => ({
      ...row,
      cells: row.cells.map(write),
      ...(row.note === undefined ? {} : { note: write(row.note) }),
    })),
  };
}

function drawingIn(drawing: Drawing, write: Write): Drawing {
  return {
    ...drawing,
    title: write(drawing.title),
    description: write(drawing.description),
    shapes: drawing.shapes.map((shape) => shapeIn(shape, write)),
  };
}

function shapeIn(shape: Shape, write: Write): Shape {
  return shape.kind === 'text' ? { ...shape, text: write(shape.text) } : shape;
}
