'use client';
import { useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { PlanWide } from '#app/_ui/plan/plan-wide.tsx';
import { ShownWords } from '#app/_ui/shown-forms.client.tsx';
import { ShownSentence, ShownSource } from '#app/_ui/shown-units.client.tsx';
import { RepairList } from '#app/(desk)/enquiries/[id]/_why/repair-list.client.tsx';
import type { RepairOffer } from '#lib/services/lines/repair-offers.ts';
import type { Told } from '#lib/units/say-figure.ts';

/** Lines that are done with the same assembly. */
export interface LineGroup {
  readonly key: string;
  readonly parts: readonly string[];
  readonly settings: string;
  readonly valves: number;
  readonly crews: string;
  readonly tags: readonly string[];
  readonly warnings: number;
}

/** Lines that no assembly serves, for the same reasons. */
export interface RefusedGroup {
  readonly key: string;
  readonly tags: readonly string[];
  readonly because: readonly (Told & { readonly source: string })[];
  readonly repairs: readonly RepairOffer[];
}

const GROUPS_A_PAGE = 20;
const TAGS_AT_FIRST = 12;

export function PlanLines({
  enquiryId,
  groups,
}: {
  readonly enquiryId: number;
  readonly groups: readonly LineGroup[];
}) {
  const pages = usePages(groups);
  return (
    <>
      <PlanWide label="Assemblies and their lines">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Assembly, power source to valve</th>
              <th scope="col">Limiter start and ceiling at the valve</th>
              <th scope="col" className={styles.number}>
                Valves
              </th>
              <th scope="col">Crew</th>
              <th scope="col">Lines</th>
            </tr>
          </thead>
          <tbody>
            {pages.shown.map((group) => (
              <tr key={group.key}>
                <td className={styles.sentence}>
                  {group.parts.join(' · ')}
                  {group.warnings === 0 ? null : (
                    <>
                      <br />
                      <span className={styles.warning}>
                        {group.warnings} {group.warnings === 1 ? 'warning' : 'warnings'}
                      </span>
                    </>
                  )}
                </td>
                <td>
                  <ShownWords>{group.settings}</ShownWords>
                </td>
                <td className={styles.number}>{group.valves}</td>
                <td>{group.crews}</td>
                <td>
                  <Tags enquiryId={enquiryId} tags={group.tags} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </PlanWide>
      {pages.buttons}
    </>
  );
}

export function PlanRefusals({
  enquiryId,
  groups,
}: {
  readonly enquiryId: number;
  readonly groups: readonly RefusedGroup[];
}) {
  const pages = usePages(groups);
  return (
    <>
      <ul className={styles.bare}>
        {pages.shown.map((group) => (
          <li key={group.key} className={styles.refused}>
            <Tags enquiryId={enquiryId} tags={group.tags} />
            <p>These cannot all hold:</p>
            <ul className={styles.list}>
              {group.because.map((finding) => (
                <li key={finding.sentence}>
                  <ShownSentence told={finding} />{' '}
                  <span className={styles.soft}>
                    (<ShownSource source={finding.source} />)
                  </span>
                </li>
              ))}
            </ul>
            <p>It would work:</p>
            <RepairList enquiryId={enquiryId} lines={{ tags: group.tags }} offers={group.repairs} replan="yes" />
          </li>
        ))}
      </ul>
      {pages.buttons}
    </>
  );
}

function Tags({ enquiryId, tags }: { readonly enquiryId: number; readonly tags: readonly string[] }) {
  const [all, setAll] = useState(false);
  const shown = all ? tags : tags.slice(0, TAGS_AT_FIRST);
  const more = tags.length - shown.length;
  return (
    <span className={styles.tags}>
      {shown.map((tag) => (
        <a key={tag} href={`/enquiries/${enquiryId}/lines?tag=${encodeURIComponent(tag)}`}>
          {tag}
        </a>
      ))}
      {more > 0 ? (
        <button type="button" className={styles.small} onClick={() => setAll(true)}>
          and {more} more
        </button>
      ) : null}
    </span>
  );
}

function usePages<Row>(rows: readonly Row[]) {
  const [page, setPage] = useState(0);
  const last = Math.max(0, Math.ceil(rows.length / GROUPS_A_PAGE) - 1);
  const at = Math.min(page, last);
  const from = at * GROUPS_A_PAGE;
  const shown = rows.slice(from, from + GROUPS_A_PAGE);
  const buttons =
    last === 0 ? null : (
      <p className={styles.row}>
        <button type="button" className={styles.small} disabled={at === 0} onClick={() => setPage(at - 1)}>
          Earlier
        </button>
        <span>
          {from + 1} to {from + shown.length} of {rows.length}
        </span>
        <button type="button" className={styles.small} disabled={at === last} onClick={() => setPage(at + 1)}>
          Later
        </button>
      </p>
    );
  return { shown, buttons };
}
