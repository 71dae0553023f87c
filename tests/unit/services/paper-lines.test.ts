import { describe, expect, it } from 'vitest';
import { gatherClasses } from '#lib/documents/papers/line-classes.ts';
import type { PaperLine } from '#lib/documents/papers/paper-inputs.ts';
import { sitePaper } from '#lib/documents/papers/site-paper.ts';
import { paperLines } from '#lib/services/quotes/paper-lines.ts';
import { sampleAssembly, sampleDuty, sampleLine } from '#tests/support/papers/sample-duty.ts';
import { SAMPLE_CONTEXT } from '#tests/support/papers/sample-plan.ts';

const TAG = 'SV-7';
const line = sampleLine(TAG, { qty: 6 });
const duty = sampleDuty({ tag: TAG });
const plain = sampleAssembly(duty, {});
const other = { ...sampleAssembly(duty, { head: 'H-101' }), id: 'another' };

/** Six valves: three by the first crew, two by the second with the same assembly, none by anybody for the last. */
function shared(parts: readonly { readonly crew: number; readonly qty: number; readonly assembly: string }[]) {
  const served = parts.reduce((sum, { qty }) => sum + qty, 0);
  return paperLines({
    lines: [line],
    worked: { duties: [duty], unserved: [] },
    outcome: {
      kits: [0, 1].map((crew) => ({ crew, items: [], time_s: 0, mass_kg: 0, pieces: 0 })),
      assemblies: { plain, other },
      lines: [{ tag: TAG, classId: 'c', asked: 6, served, parts }],
    },
  });
}

const told = (lines: readonly PaperLine[]) =>
  lines.map(({ crew, assembly, line: part, share }) => ({ crew, assembly: assembly?.id, qty: part.qty, ...share }));

describe('a line that crews share', () => {
  it('stands on the papers once for each crew and assembly, and once for what is left', () => {
    const lines = shared([
      { crew: 0, qty: 3, assembly: 'plain' },
      { crew: 1, qty: 2, assembly: 'other' },
    ]);
    expect(told(lines)).toEqual([
      { crew: 1, assembly: plain.id, qty: 3, before: 0, of: 6 },
      { crew: 2, assembly: 'another', qty: 2, before: 3, of: 6 },
      { crew: undefined, assembly: undefined, qty: 1, before: 5, of: 6 },
    ]);
    expect(gatherClasses(lines).reduce((sum, { valves }) => sum + valves, 0)).toBe(6);
  });

  it('has a row to write on for every valve that is served, counted through', () => {
    const paper = sitePaper({
      context: SAMPLE_CONTEXT,
      crewDays: [],
      lines: shared([
        { crew: 0, qty: 4, assembly: 'plain' },
        { crew: 1, qty: 2, assembly: 'plain' },
      ]),
    });
    const rows = paper.blocks.flatMap((block) => (block.kind === 'table' && block.tall === true ? block.rows : []));
    expect(rows.map(({ cells }) => cells[0])).toEqual([1, 2, 3, 4, 5, 6].map((one) => `${TAG} (${one} of 6)`));
    const order = paper.blocks.flatMap((block) =>
      block.kind === 'table' && block.caption?.text === 'Order of work' ? block.rows : [],
    );
    expect(order.filter(({ tone }) => tone === 'group').map(({ cells }) => cells[0])).toEqual(['Crew 1', 'Crew 2']);
  });

  it('is told whole when one crew does all of it, and whole when nobody does', () => {
    expect(told(shared([{ crew: 1, qty: 6, assembly: 'plain' }]))).toEqual([{ crew: 2, assembly: plain.id, qty: 6 }]);
    expect(told(shared([]))).toEqual([{ crew: undefined, assembly: undefined, qty: 6 }]);
  });
});
