import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { lineSpreadSchema } from '#lib/contracts/spread.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const LIST = `Tag,Type,Size,Driven by,Depth,Qty
V1,gate,DN 100,key cap,0.9 m,2
V2,gate,"6""",key cap,1.1 m,1
AV,air valve,50,,,1
V3,gate,DN 80,key cap,0.9 m,lots
`;

const rangeSchema = z.object({ low: z.number(), nominal: z.number(), high: z.number(), basis: z.string() });

const answerSchema = z.object({
  schedule: z.object({ counts: z.record(z.string(), z.number()) }),
  plans: z
    .array(
      z.object({
        preference: z.string(),
        served: z.number(),
        asked: z.number(),
        crew_days: z.array(
          z.object({
            crew: z.number(),
            day: z.number(),
            valves: z.number(),
            hours: z.number(),
            trigger_s: rangeSchema,
            one_person: z.object({ a8_m_s2: rangeSchema, points: z.number() }),
            in_turns: z.object({ persons: z.number(), a8_m_s2: rangeSchema, points: z.number() }).nullable(),
            l_ex_8h_db: rangeSchema,
            heaviest_case_kg: z.number(),
            lifts: z.object({ heaviest_kg: z.number(), heaviest_part: z.string() }),
            steps: z.array(z.object({ id: z.string() })).min(5),
          }),
        ),
      }),
    )
    .length(4),
  unserved: z.array(z.unknown()),
  timings: z.record(z.string(), z.number()),
});

const spreadAnswerSchema = z.object({
  duties: z.array(
    z.object({ torque_start_nm: z.object({ low: z.number(), high: z.number() }), spread: lineSpreadSchema }),
  ),
});

let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'kitwright-command-'));
  await writeFile(path.join(folder, 'list.csv'), LIST);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

function kitwright(...words: readonly string[]): Promise<Ran> {
  const env = { ...process.env, KITWRIGHT_DATABASE: path.join(folder, 'house.sqlite') };
  return new Promise((resolve) => {
    execFile('npm', ['run', '-s', 'kitwright', '--', ...words], { env }, (error, out, err) => {
      resolve({ status: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });
}

const list = () => path.join(folder, 'list.csv');

describe('the command line', () => {
  it('plan: tells every row, serves the list, and writes four papers and the answer as JSON', async () => {
    const ran = await kitwright('plan', list(), '--days', '1', '--from', '2031-03-17', '--out', folder);
    expect(ran.status, ran.err).toBe(0);
    expect(ran.out).toContain('4 rows: 3 lines, 1 set aside, 0 refused, 0 blank.');
    expect(ran.out).toContain('Row 4, AV: set aside.');
    expect(ran.out).toContain('Row 5, qty: Quantity “lots” cannot be read');
    expect(ran.out).toContain('4 of 4 valves that equipment fits are served by 1 crew in 1 day; chosen for least cost');
    const text = Object.fromEntries(
      await Promise.all(
        ['quote', 'packing-list', 'site-sheet', 'calculation'].map(async (paper) => {
          const bytes = await readFile(path.join(folder, `${paper}.pdf`));
          return [paper, readPdf(bytes).text] as const;
        }),
      ),
    );
    expect(text.quote).toContain('Total to pay, EUR');
    expect(text['packing-list']).toContain('Function test at torque done and recorded.');
    expect(text['site-sheet']).toContain('Limiter: start, step, ceiling');
    expect(text.calculation).toContain('What the valve needs and may see');
    const answer = answerSchema.parse(JSON.parse(await readFile(path.join(folder, 'plan.json'), 'utf8')));
    expect(answer.schedule.counts).toMatchObject({ rows: 4, lines: 3, setAside: 1, refused: 0, blank: 0 });
    expect(answer.plans.map(({ preference }) => preference)).toEqual(['cost', 'pieces', 'time', 'surest']);
    expect(answer.plans[0]).toMatchObject({ served: 4, asked: 4 });
    const days = answer.plans[0]?.crew_days ?? [];
    expect(days.map(({ crew, day, valves }) => [crew, day, valves])).toEqual([[1, 1, 4]]);
    expect(days[0]?.trigger_s.nominal).toBeLessThan(3600 * (days[0]?.hours ?? 0));
    expect(ran.out).toMatch(/Crew 1, day 1: 4 valves, .* at the drive, A\(8\) [\d.]+(, up to [\d.]+)? m\/s²/);
    expect(ran.out).toContain('measured values and the law of the place decide');
    expect(text['site-sheet']).toContain('The crews’ days');
    expect(Object.keys(answer.timings)).toEqual(
      expect.arrayContaining(['intake', 'duty', 'kits', 'plan cost', 'settle cost']),
    );
  });

  it('plan: leaves with 3 when nothing fits a line, and says why and what would change it', async () => {
    const site = path.join(folder, 'site.json');
    await writeFile(site, JSON.stringify({ sources_allowed: ['battery'], zone: '0' }));
    const ran = await kitwright('plan', list(), '--site', site, '--days', '1');
    expect(ran.status, ran.err).toBe(3);
    expect(ran.out).toMatch(/Nothing fits 3 lines:/);
    expect(ran.out).toMatch(/zone/i);
  });

  it('why: names the parts that serve a line, and the rule that keeps another part off it', async () => {
    const served = await kitwright('why', list(), 'V1');
    expect(served.status, served.err).toBe(0);
    expect(served.out).toMatch(/^1\. D-\d+ .*valve key/m);
    const wheel = await kitwright('why', list(), 'V1', 'W-204');
    expect(wheel.status).toBe(3);
    expect(wheel.out).toContain('W-204 does not serve V1.');
    expect(wheel.out).toContain('is turned by a nut');
  });

  it('duty: gives every line its torque and turns with their basis', async () => {
    const ran = await kitwright('duty', list());
    expect(ran.status, ran.err).toBe(0);
    const rows = ran.out.trim().split('\n');
    const measure = rows.filter((row) => row.startsWith('  Measure this first: '));
    expect(measure).toHaveLength(3);
    expect(measure[1]).toMatch(/it narrows the torque to start/);
    expect(rows).toHaveLength(4 + measure.length);
    expect(ran.out).toMatch(/^V2: to start [\d.]+…[\d.]+ N·m \(assumed\), .* turns \(rule of thumb\), never above/m);
  });

  it('--units us: tells text in US customary units and leaves JSON in SI', async () => {
    const si = await kitwright('duty', list());
    const us = await kitwright('duty', list(), '--units', 'us');
    expect(us.out.match(/lbf·ft/g)?.length).toBe(si.out.match(/N·m/g)?.length);
    expect(us.out).not.toMatch(/\d N·m(?! \()/);
    const [inSi, inUs] = [
      await kitwright('duty', list(), '--json'),
      await kitwright('duty', list(), '--json', '--units', 'us'),
    ];
    expect(inUs.out).toBe(inSi.out);
    expect(inUs.out).not.toContain('inUs');
    expect((await kitwright('duty', list(), '--units', 'ells')).status).toBe(2);
  });

  it('duty --spread: adds percentiles inside the range, and refuses a number of draws out of bounds', async () => {
    const ran = await kitwright('duty', list(), '--spread', '300', '--json');
    expect(ran.status, ran.err).toBe(0);
    const { duties } = spreadAnswerSchema.parse(JSON.parse(ran.out));
    expect(duties.length).toBe(3);
    for (const { torque_start_nm, spread } of duties) {
      const worse = spread.torque_start_nm[spread.worse_direction];
      expect([worse.low, worse.high]).toEqual([torque_start_nm.low, torque_start_nm.high]);
      expect(worse.p5).toBeLessThan(worse.p95);
    }
    const few = await kitwright('duty', list(), '--spread', '20');
    expect(few.status).toBe(2);
    expect(few.err).toContain('--spread takes a number of draws from 100 to 10000');
  });
  it('duty: nonsense is told under its line with its column, value and range, and every line stays', async () => {
    const nonsense = path.join(folder, 'nonsense.csv');
    await writeFile(
      nonsense,
      'Tag,Size,Turns,Wheel diameter,Temperature,Line pressure\nA,-100,0,,900 °C,10 000 bar\nB,DN 15,12,3 m,,\n',
    );
    const ran = await kitwright('duty', nonsense);
    expect(ran.status, ran.err).toBe(0);
    expect(ran.out).toMatch(/^A: to start/m);
    expect(ran.out).toMatch(/^B: to start/m);
    for (const told of [
      'Size “-100” is outside what is plausible (DN 8 to DN 3000)',
      'Turns “0” is outside what is plausible (0.2 turns to 5000 turns)',
      'Line pressure “10 000 bar” is outside what is plausible (0 bar to 770 bar)',
      'Temperature 900 °C is outside what is usual (-200 °C to 650 °C)',
      'Wheel diameter 3000 mm is unlikely for a DN 15 valve: usual is 28 mm to 240 mm.',
    ])
      expect(ran.out).toContain(`  ${told}`);
  });

  it('rules: gives every rule with its source', async () => {
    const ran = await kitwright('rules', '--json');
    expect(ran.status, ran.err).toBe(0);
    const rules = z.array(z.object({ id: z.string(), source: z.string().min(3) })).parse(JSON.parse(ran.out));
    expect(rules.length).toBeGreaterThan(100);
  });

  it('leaves with 2 and a sentence when it cannot use what it is given', async () => {
    const missing = await kitwright('plan', path.join(folder, 'none.csv'));
    expect(missing).toMatchObject({ status: 2, out: '' });
    expect(missing.err).toContain('cannot be opened; check the path');
    const days = await kitwright('plan', list(), '--days', 'x');
    expect(days.status).toBe(2);
    expect(days.err).toContain('--days takes a whole number from 1, not “x”.');
    const tag = await kitwright('why', list(), 'V9');
    expect(tag.status).toBe(2);
    expect(tag.err).toContain('The list has no line “V9”.');
  });
});
