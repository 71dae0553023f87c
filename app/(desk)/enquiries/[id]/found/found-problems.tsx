import type { VisitsRecorded } from '#lib/services/visits/record-visits.ts';

interface FoundProblemsProps {
  readonly problems: VisitsRecorded['problems'];
  /** How a row is named: its tag on screen, its number in a file. */
  readonly nameOf: (row: number) => string;
}

/** Every cell that could not be taken, and what to do. */
export function FoundProblems({ problems, nameOf }: FoundProblemsProps) {
  if (problems.length === 0) return null;
  return (
    <ul>
      {problems.map(({ row, column, severity, sentence, remedy }) => (
        <li key={`${row} ${column} ${sentence}`}>
          <span className={`mark ${severity === 'refused' ? 'refusal' : 'warning'}`}>
            {severity === 'refused' ? 'refused' : 'in doubt'}
          </span>{' '}
          {nameOf(row)}, {column.replaceAll('_', ' ')}: {sentence} {remedy}
        </li>
      ))}
    </ul>
  );
}
