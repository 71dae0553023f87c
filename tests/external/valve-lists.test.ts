import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';
import type { HandRead } from './hand-read.ts';
import { ENUGU } from './hand-read-enugu.ts';
import { JUABEN } from './hand-read-juaben.ts';

const REFERENCE = process.env.KITWRIGHT_REFERENCE ?? new URL('../../../shared/reference', import.meta.url).pathname;

async function take(list: string): Promise<Taken> {
  const path = `${REFERENCE}/valve-lists/${list}/valves.csv`;
  expect(existsSync(path), `the reference folder has no ${list}; set KITWRIGHT_REFERENCE`).toBe(true);
  const tables = await readTables({ bytes: new Uint8Array(readFileSync(path)), fileName: 'valves.csv' });
  const table = tables.ok ? tables.value[0] : undefined;
  if (table === undefined) throw new Error(`${list} cannot be read.`);
  return takeRows({ table, mapping: proposeMapping(table) });
}

/** What the program made of the row, in the words of the hand-read table. */
function asRead(taken: Taken, hand: HandRead): HandRead {
  const { because } = hand;
  const asks = (row: number): readonly string[] =>
    taken.problems
      .filter((problem) => problem.row === row && problem.code !== 'same-as-row')
      .map((problem) => problem.code);
  const gone = taken.setAside.find((aside) => aside.tag === hand.tag);
  if (gone !== undefined)
    return { tag: hand.tag, outcome: 'aside', because, ...known('asks', asks(gone.row)) } as HandRead;
  const found = taken.lines.find((line) => line.line.tag === hand.tag);
  if (found === undefined) throw new Error(`Row ${hand.tag} is neither a line nor set aside.`);
  const { size, valveType, rating, place } = found.line;
  const dn =
    size === undefined ? undefined : size.low === size.high ? size.low * 1000 : [size.low * 1000, size.high * 1000];
  return {
    tag: hand.tag,
    ...(dn === undefined ? {} : { dn }),
    ...(valveType === undefined
      ? {}
      : { type: valveType.value, kind: valveType.basis === 'assumed' ? 'assumed' : 'said' }),
    outcome: 'line',
    ...(place.surfaceBox === undefined ? {} : { box: place.surfaceBox.value }),
    ...(rating === undefined ? {} : { rating: rating.value }),
    ...known('asks', asks(found.row)),
    because,
  } as HandRead;
}

function known(key: 'asks', value: readonly string[]): { readonly asks?: readonly string[] } {
  return value.length === 0 ? {} : { [key]: [...value].sort() };
}

const sorted = (hand: HandRead): HandRead =>
  hand.asks === undefined ? hand : { ...hand, asks: [...hand.asks].sort() };

describe.each([
  ['enugu-nigeria', ENUGU, 1461],
  ['juaben-ghana', JUABEN, 59],
] as const)('the list %s', (list, hand, rows) => {
  it('no row is lost: every row is a line, set aside with its reason, or refused with its reason', async () => {
    const taken = await take(list);
    const { counts } = taken;
    expect(counts.rows).toBe(rows);
    expect(counts.lines + counts.setAside + counts.refused + counts.blank).toBe(rows);
    const seen = [...taken.lines, ...taken.setAside].map((one) => one.row);
    expect(new Set(seen).size + counts.refused + counts.blank).toBe(rows);
    for (const aside of taken.setAside) expect(aside.reason).toMatch(/\.$/);
    console.info(`${list}: ${JSON.stringify(counts)}`);
  });

  it('at least 95 % of its valves become lines, and tags are unique', async () => {
    const taken = await take(list);
    expect(
      taken.counts.lines / (taken.counts.rows - taken.counts.setAside - taken.counts.blank),
    ).toBeGreaterThanOrEqual(0.95);
    expect(new Set(taken.lines.map((line) => line.line.tag)).size).toBe(taken.lines.length);
    expect(taken.lines.filter((line) => line.line.size === undefined)).toEqual([]);
    // Nothing but things that work by themselves, and the bend of row 293, is set aside.
    for (const { reason, tag } of taken.setAside) if (tag !== '293') expect(reason).toMatch(/works by itself/);
  });

  it('at least forty rows are read by hand, each once', () => {
    expect(hand.length).toBeGreaterThanOrEqual(40);
    expect(new Set(hand.map((one) => one.tag)).size).toBe(hand.length);
  });

  it('is read as a careful person reads it', async () => {
    const taken = await take(list);
    expect(hand.map((one) => asRead(taken, one))).toEqual(hand.map(sorted));
  });
});
