'use client';

import Link from 'next/link';
import { KnownMark } from '#app/_ui/known-mark.client.tsx';
import { useUnits } from '#app/_ui/shown-units.client.tsx';
import type { CellEdit } from '#lib/services/edit-cells.ts';
import type { LineView } from '#lib/services/line-view.ts';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import styles from './schedule-table.module.css';
import { SheetCell, type SheetPlace } from './sheet-cell.client.tsx';

interface ScheduleRowProps {
  readonly enquiryId: number;
  readonly index: number;
  readonly top: number;
  readonly line: LineView | undefined;
  readonly columns: readonly ColumnChoice[];
  readonly isChosen: boolean;
  readonly onEdit: (edits: readonly CellEdit[]) => void;
  readonly onMove: (place: SheetPlace) => void;
  readonly onBlock: (text: string, place: SheetPlace) => void;
  readonly onChoose: (lineId: number) => void;
}

/** One line of the schedule: its cells to write in, its duty, and what is to settle. */
export function ScheduleRow(props: ScheduleRowProps) {
  const { enquiryId, index, top, line, columns, isChosen } = props;
  const place = { transform: `translateY(${top}px)` };
  if (!line) {
    return (
      <div role="row" className={styles.row} style={place} aria-rowindex={index + 2}>
        <div role="cell" className={styles.cell}>
          loading…
        </div>
      </div>
    );
  }
  const name = line.tag === '' ? `row ${line.row}` : line.tag;
  const { duty } = line;
  return (
    <div
      role="row"
      className={isChosen ? `${styles.row} ${styles.chosen}` : styles.row}
      style={place}
      aria-rowindex={index + 2}
    >
      <div role="cell" className={`${styles.cell} ${styles.pick}`}>
        <input
          type="checkbox"
          aria-label={`Choose ${name}`}
          checked={isChosen}
          onChange={() => props.onChoose(line.id)}
        />
      </div>
      {columns.map((column, at) => (
        <div role="cell" className={`${styles.cell} ${widthOf(column.name)}`} key={column.name}>
          <SheetCell
            place={{ row: index, column: at }}
            column={column}
            label={`${column.label}, ${name}`}
            text={cellText(line, column)}
            known={knownText(line, column)}
            onSave={(text) => props.onEdit([{ lineId: line.id, column: column.name, text }])}
            onMove={props.onMove}
            onBlock={props.onBlock}
          />
        </div>
      ))}
      {[duty.starting, duty.running, duty.turns, duty.neverExceed].map((known, at) => (
        <div role="cell" className={`${styles.cell} ${styles.duty}`} key={['start', 'run', 'turns', 'never'][at]}>
          <KnownMark known={known} />
        </div>
      ))}
      <div role="cell" className={`${styles.cell} ${styles.settle}`}>
        <ToSettle line={line} name={name} href={`/enquiries/${enquiryId}/lines/${line.id}`} />
      </div>
    </div>
  );
}

function ToSettle({ line, name, href }: { readonly line: LineView; readonly name: string; readonly href: string }) {
  const refused = line.problems.filter(({ severity }) => severity === 'refused').length;
  const doubts = line.problems.filter(({ severity }) => severity === 'doubt').length;
  const warnings = line.duty.findings.filter(({ severity }) => severity !== 'note').length;
  const system = useUnits();
  const sentences = [...line.problems, ...line.duty.findings].map((told) => sentenceIn(told, system));
  return (
    <Link
      href={href}
      title={sentences.join('\n')}
      aria-label={`Details of ${name}: ${said(refused, doubts, warnings)}`}
    >
      {refused > 0 && <span className="mark refusal">{refused} refused</span>}{' '}
      {doubts > 0 && <span className="mark warning">{doubts} in doubt</span>}{' '}
      {warnings > 0 && <span className="mark warning">{warnings} to heed</span>}{' '}
      {refused + doubts + warnings === 0 && 'details'} {line.known.length > 0 && <span className="mark">visited</span>}
    </Link>
  );
}

function said(refused: number, doubts: number, warnings: number): string {
  const parts = [
    refused > 0 ? `${refused} refused` : '',
    doubts > 0 ? `${doubts} in doubt` : '',
    warnings > 0 ? `${warnings} to heed` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing to settle' : parts.join(', ');
}

export function widthOf(column: string): string {
  if (column === 'tag') return styles.tag ?? '';
  return column === 'qty' ? (styles.short ?? '') : '';
}

function knownText(line: LineView, column: ColumnChoice): string | undefined {
  const known = line.known.find((one) => one.column === column.name && one.use === 'used');
  return known && `${known.text} (visit)`;
}

function cellText(line: LineView, column: ColumnChoice): string {
  const cells: Readonly<Record<string, string | undefined>> = line.cells;
  return cells[column.name] ?? '';
}
