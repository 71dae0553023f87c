/*
 * Moves blocks of text along a column so that none overlaps another and none is farther from its mark than it must be.
 * Invariant: the order of the marks is kept; blocks stay inside the column whenever they fit at all.
 * Not here: what the labels say; leader lines.
 * Read next: torque-ladder.ts, drive-line.ts.
 */
export interface LabelBlock {
  /** Where the middle of the block would like to be. */
  readonly wanted: number;
  readonly height: number;
}

export interface LabelColumn {
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}

/** Height that the blocks need at least. */
export function neededHeight(blocks: readonly LabelBlock[], gap: number): number {
  return blocks.reduce((sum, block) => sum + block.height, 0) + Math.max(0, blocks.length - 1) * gap;
}

interface Pool {
  readonly members: readonly number[];
  readonly start: number;
  readonly size: number;
}

/**
 * Middles of the blocks, in the order given: blocks that collide are pooled and centred on their mean wish
 * (pool-adjacent-violators, the exact least-squares answer for ordered blocks).
 */
export function placeLabels(blocks: readonly LabelBlock[], column: LabelColumn): readonly number[] {
  const order = blocks
    .map((_, index) => index)
    .sort((a, b) => (blocks[a]?.wanted ?? 0) - (blocks[b]?.wanted ?? 0) || a - b);
  const pools: Pool[] = [];
  for (const index of order) {
    pools.push(poolOf([index], blocks, column));
    for (;;) {
      const last = pools.at(-1);
      const before = pools.at(-2);
      if (last === undefined || before === undefined || before.start + before.size + column.gap <= last.start + 1e-9)
        break;
      pools.splice(-2, 2, poolOf([...before.members, ...last.members], blocks, column));
    }
  }
  const middles = blocks.map((block) => block.wanted);
  for (const pool of pools) {
    let cursor = pool.start;
    for (const member of pool.members) {
      const height = blocks[member]?.height ?? 0;
      middles[member] = cursor + height / 2;
      cursor += height + column.gap;
    }
  }
  return middles;
}

function poolOf(members: readonly number[], blocks: readonly LabelBlock[], column: LabelColumn): Pool {
  const size = neededHeight(
    members.map((member) => blocks[member] ?? { wanted: 0, height: 0 }),
    column.gap,
  );
  let offset = 0;
  let wishes = 0;
  for (const member of members) {
    const block = blocks[member] ?? { wanted: 0, height: 0 };
    wishes += block.wanted - (offset + block.height / 2);
    offset += block.height + column.gap;
  }
  const wished = wishes / Math.max(1, members.length);
  const start = Math.max(column.from, Math.min(wished, column.to - size));
  return { members, start, size };
}
