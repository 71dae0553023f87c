/*
 * A table of a paper: head repeated on every page, rows kept whole, groups and totals set apart by line and weight.
 * Invariant: column widths come from the shares alone, so that all pages of a table line up.
 * Not here: what stands in the cells (documents).
 * Read next: block-views.tsx.
 */
/** @jsxRuntime automatic */
import { Text, View } from '@react-pdf/renderer';
import type { Block, TableColumn, TableRow } from '#lib/documents/paper.ts';
import { S } from './styles.ts';

type Table = Extract<Block, { kind: 'table' }>;

export function TableView({ table }: { readonly table: Table }) {
  const total = table.columns.reduce((sum, column) => sum + column.share, 0);
  return (
    <View style={S.table}>
      <View fixed wrap={false} minPresenceAhead={36}>
        {table.caption === undefined ? null : <CaptionView caption={table.caption} />}
        <View style={S.headRow}>
          {table.columns.map((column) => (
            <Text
              key={column.label}
              style={[S.headCell, { width: widthOf(column, total), textAlign: alignOf(column) }]}
            >
              {column.label}
            </Text>
          ))}
        </View>
      </View>
      {table.rows.map((row, index) => (
        <RowView
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of a frozen table never move
          key={index}
          row={row}
          columns={table.columns}
          total={total}
          dense={table.dense === true}
          tall={table.tall === true}
        />
      ))}
    </View>
  );
}

function CaptionView({ caption }: { readonly caption: NonNullable<Table['caption']> }) {
  return (
    <View>
      <Text style={caption.level === 1 ? S.h1 : S.h2}>{caption.text}</Text>
      {caption.words === undefined ? null : <Text style={S.muted}>{caption.words}</Text>}
    </View>
  );
}

function RowView(asked: {
  readonly row: TableRow;
  readonly columns: readonly TableColumn[];
  readonly total: number;
  readonly dense: boolean;
  readonly tall: boolean;
}) {
  const { row, columns, total, dense, tall } = asked;
  const tone = row.tone ?? 'plain';
  const weight = tone === 'group' || tone === 'total' || tone === 'result' ? { fontWeight: 600 as const } : {};
  const size = dense ? { fontSize: 7.5 } : {};
  return (
    <View
      style={[
        S.row,
        ...(tone === 'group' ? [S.groupRow] : []),
        ...(tone === 'total' ? [S.totalRow] : []),
        ...(dense ? [S.denseRow] : []),
        ...(tall ? [S.tallRow] : []),
      ]}
      wrap={mayWrap(row)}
      {...(tone === 'group' ? { minPresenceAhead: 30 } : {})}
    >
      {tone === 'group' ? (
        <Text style={[S.cell, weight]}>{row.cells.filter((cell) => cell !== '').join('   ')}</Text>
      ) : (
        <View style={S.rowCells}>
          {columns.map((column, index) => (
            <Text
              key={column.label}
              style={[
                S.cell,
                tone === 'result' && index === columns.length - 1 ? {} : weight,
                size,
                ...(tall && index > 0 ? [S.boxedCell] : []),
                ...(row.cells[index] === '☐' ? [S.tickCell] : []),
                { width: widthOf(column, total), textAlign: alignOf(column) },
              ]}
            >
              {row.cells[index] ?? ''}
            </Text>
          ))}
        </View>
      )}
      {row.note === undefined ? null : <Text style={S.rowNote}>{row.note}</Text>}
    </View>
  );
}

/** A row stays whole unless its words might fill a page by themselves. */
function mayWrap(row: TableRow): boolean {
  return [...row.cells, row.note ?? ''].reduce((sum, cell) => sum + cell.length, 0) > 2500;
}

function widthOf(column: TableColumn, total: number): `${number}%` {
  return `${(column.share / total) * 100}%`;
}

function alignOf(column: TableColumn): 'left' | 'right' | 'center' {
  return column.align === 'right' ? 'right' : column.align === 'centre' ? 'center' : 'left';
}
