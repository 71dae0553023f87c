'use client';

import type { ColumnChoice } from '#lib/services/schedule/list-column-choices.ts';
import type { ProposedTable } from '#lib/services/schedule/receive-list.ts';

export type Mapping = ProposedTable['mapping'];

interface MappingTableProps {
  readonly table: ProposedTable;
  readonly mapping: Mapping;
  readonly columns: readonly ColumnChoice[];
  readonly onChange: (mapping: Mapping) => void;
}

const SAMPLES = 4;

/** One row a column of the list: its header, what it was taken for and why, and some of its values. */
export function MappingTable({ table, mapping, columns, onChange }: MappingTableProps) {
  function take(index: number, field: string): void {
    const chosen = columns.find((column) => column.name === field);
    if (!chosen) return;
    onChange({
      ...mapping,
      columns: mapping.columns.map((column) =>
        column.index === index ? { ...column, field: chosen.name, confidence: 'sure', why: 'Chosen by hand.' } : column,
      ),
    });
  }
  const body = table.sample.filter((row) => mapping.headerRow === null || row.row > mapping.headerRow);
  return (
    <div className="wide">
      <table>
        <thead>
          <tr>
            <th>Column of the list</th>
            <th>Taken for</th>
            <th>How sure</th>
            <th>Some of its values</th>
          </tr>
        </thead>
        <tbody>
          {mapping.columns.map((column) => (
            <tr key={column.index}>
              <td>
                {column.header === '' ? <em>column {column.index + 1}</em> : column.header}
                {column.unit && <small> in {column.unit}</small>}
              </td>
              <td>
                <select
                  aria-label={`Meaning of ${column.header || `column ${column.index + 1}`}`}
                  value={column.field}
                  onChange={(event) => take(column.index, event.target.value)}
                >
                  {columns.map((choice) => (
                    <option key={choice.name} value={choice.name}>
                      {choice.label}
                    </option>
                  ))}
                </select>
              </td>
              <td>
                <span className={column.confidence === 'guess' ? 'mark warning' : 'mark'}>{column.confidence}</span>{' '}
                <small>{column.why}</small>
              </td>
              <td>
                <small>
                  {body
                    .map((row) => row.cells[column.index] ?? '')
                    .filter((text) => text !== '')
                    .slice(0, SAMPLES)
                    .join(' · ')}
                </small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
