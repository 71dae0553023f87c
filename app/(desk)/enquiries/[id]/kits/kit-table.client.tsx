'use client';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import type { ItemTools, ShownItem } from './kit-item.ts';
import { PinLines } from './pin-lines.client.tsx';

interface KitTableProps extends ItemTools {
  readonly crew: number;
  readonly roles: readonly { readonly role: string; readonly heading: string }[];
  readonly items: readonly ShownItem[];
}

/** What one crew carries, role by role. */
export function KitTable({ crew, roles, items, ...tools }: KitTableProps) {
  return (
    <PlanWide label={`Parts that crew ${crew + 1} carries`}>
      <table className={styles.kit}>
        <thead>
          <tr>
            <th scope="col" className={styles.number}>
              Count
            </th>
            <th scope="col">Part</th>
            <th scope="col">Needed for</th>
            <th scope="col" className={styles.screenOnly}>
              Choice
            </th>
          </tr>
        </thead>
        {roles.map(({ role, heading }) => (
          <RoleItems key={role} heading={heading} items={items.filter((item) => item.role === role)} {...tools} />
        ))}
      </table>
    </PlanWide>
  );
}

interface RoleItemsProps extends ItemTools {
  readonly heading: string;
  readonly items: readonly ShownItem[];
}

function RoleItems({ heading, items, ...tools }: RoleItemsProps) {
  if (items.length === 0) return null;
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={4} className={styles.group}>
          {heading}
        </th>
      </tr>
      {items.map((item) => (
        <tr key={item.number}>
          <td className={styles.number}>{item.count}</td>
          <th scope="row">
            {item.name}
            <br />
            <span className={styles.soft}>{item.number}</span>
          </th>
          <td className={styles.sentence}>
            {needText(item)}
            {item.without === '' ? null : (
              <>
                <br />
                <strong>{item.without}</strong>
              </>
            )}
          </td>
          <td className={styles.screenOnly}>
            <ItemChoice item={item} {...tools} />
          </td>
        </tr>
      ))}
    </tbody>
  );
}

function ItemChoice({ item, ...tools }: ItemTools & { readonly item: ShownItem }) {
  const { locked, busy, leaveOut, keep } = tools;
  return (
    <span className={styles.row}>
      {locked.includes(item.number) ? (
        <span className={styles.soft}>✓ locked in</span>
      ) : (
        <button
          type="button"
          className={styles.small}
          disabled={busy}
          aria-label={`Lock in ${item.name} ${item.number}`}
          onClick={() => keep(item.number)}
        >
          Lock in
        </button>
      )}
      <button
        type="button"
        className={styles.small}
        disabled={busy}
        aria-label={`Leave out ${item.name} ${item.number}`}
        onClick={() => leaveOut(item.number)}
      >
        Leave out
      </button>
      {item.neededForCount === 0 ? null : <PinLines item={item} {...tools} />}
    </span>
  );
}

function needText({ neededFor, neededForCount }: ShownItem): string {
  if (neededForCount === 0) return 'the crew as a whole (supply, spares, packing)';
  const more = neededForCount - neededFor.length;
  return `${neededFor.join(', ')}${more > 0 ? ` and ${more} more lines` : ''}`;
}
