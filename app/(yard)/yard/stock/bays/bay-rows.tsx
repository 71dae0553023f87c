import Link from 'next/link';
import type { BayLine } from '#lib/services/stock/open-bays.ts';
import styles from './bays.module.css';

interface BayRowsProps {
  readonly bays: readonly BayLine[];
  readonly depot: string;
  readonly open: string;
}

/** The bays in the order in which one walks past them. */
export function BayRows({ bays, depot, open }: BayRowsProps) {
  return (
    <ul className={styles.bays}>
      {bays.map((bay) => (
        <li key={bay.code}>
          <Link
            className="tag"
            href={`/yard/stock/bays?depot=${depot}&bay=${bay.code}`}
            aria-current={bay.code === open ? 'true' : undefined}
          >
            {bay.code}
          </Link>
          <div className={styles.what}>
            {standing(bay)}
            {bay.note === '' ? null : <small>{bay.note}</small>}
          </div>
          <small className="soft" title="Place on the walk">
            place {bay.walkOrder}
          </small>
        </li>
      ))}
    </ul>
  );
}

export function standing({ units, boxes }: Pick<BayLine, 'units' | 'boxes'>): string {
  if (units + boxes === 0) return 'empty';
  return [
    units === 0 ? '' : `${units} ${units === 1 ? 'unit' : 'units'}`,
    boxes === 0 ? '' : `${boxes} ${boxes === 1 ? 'box' : 'boxes'} of counted pieces`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}
