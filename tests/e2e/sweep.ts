import { readdirSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './signed-in.ts';

/** Goes through an area of the house by its own links and tells what is wrong with each of its pages. */

/** Structure is looked at in both widths and colours in both schemes; the two other pairs differ from these in neither. */
const LOOKS = [
  { width: 1280, colorScheme: 'light' },
  { width: 390, colorScheme: 'dark' },
] as const;

/** Tab presses on one page, so that a long one ends. */
const MOST_STOPS = 250;

interface Template {
  readonly route: string;
  readonly pattern: RegExp;
}

export interface SweptArea {
  /** The folder of its pages: `app/(desk)`. */
  readonly folder: string;
  /** Pages to begin with, those with most on them first. */
  readonly start: readonly string[];
  /** What else is wrong with a page of this area, in sentences. */
  readonly also?: (page: Page) => Promise<readonly string[]>;
}

/** Every page is reached by links and nothing is wrong with any; fails with all faults at once. */
export async function sweep(page: Page, { folder, start, also }: SweptArea): Promise<void> {
  const templates = templatesOf(folder);
  const found = new Map<string, string>();
  const faults: string[] = [];
  const errors: string[] = [];
  page.on('console', (said) => said.type() === 'error' && errors.push(`in the console: ${said.text()}`));
  page.on('pageerror', ({ message }) => errors.push(`it throws: ${message}`));
  const waiting = [...start];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    const template = templateOf(path, templates);
    if (template === undefined || found.has(template.route)) continue;
    found.set(template.route, path);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    errors.length = 0;
    await page.goto(path);
    await expect(page.locator('main > .waiting')).toHaveCount(0);
    waiting.push(...(await linksOf(page)));
    const here = [...(await faultsOf(page)), ...((await also?.(page)) ?? []), ...errors];
    console.info(`${path}: ${here.length === 0 ? 'sound' : here.join(' | ')}`);
    faults.push(...here.map((fault) => `${path}: ${fault}`));
  }
  const unreached = templates.filter(({ route }) => !found.has(route));
  expect(
    unreached.map(({ route }) => route),
    'pages that nothing leads to',
  ).toEqual([]);
  expect(found.size).toBe(templates.length);
  expect(faults).toEqual([]);
}

/** The pages of an area by their files: `app/(desk)/enquiries/[id]/page.tsx` is `/enquiries/[id]`. */
function templatesOf(folder: string): readonly Template[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => /(^|\/)page\.tsx$/.test(path))
    .map((path) => {
      const route = `/${path.replace(/\/?page\.tsx$/, '').replace(/\([^)]*\)\/?/g, '')}`;
      const pattern = new RegExp(`^${route.replace(/\[[^\]]+\]/g, '[^/]+')}$`);
      return { route, pattern };
    })
    .toSorted((a, b) => (a.route < b.route ? -1 : 1));
}

/** The template a path belongs to; of two the one with fewer blanks. */
function templateOf(path: string, templates: readonly Template[]): Template | undefined {
  const blanks = ({ route }: Template) => route.split('[').length;
  return templates
    .filter(({ pattern }) => pattern.test(path.split('?')[0] ?? path))
    .toSorted((one, other) => blanks(one) - blanks(other))[0];
}

async function linksOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('a[href], form[action]')]
      .map((link) => new URL(link.getAttribute('href') ?? link.getAttribute('action') ?? '', location.href))
      .filter((url) => url.origin === location.origin && !url.pathname.startsWith('/api/'))
      .map((url) => url.pathname),
  );
}

/** All that is wrong with the page that is shown, in sentences. */
async function faultsOf(page: Page): Promise<readonly string[]> {
  const faults: string[] = [];
  const heads = await page.locator('h1').count();
  if (heads !== 1) faults.push(`it has ${heads} first headings`);
  const title = await page.title();
  if (!/^.+ · Kitwright$/.test(title)) faults.push(`its title is ${title}`);
  faults.push(...(await keyboardFaults(page)));
  for (const { width, colorScheme } of LOOKS) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (over > 0) faults.push(`at ${width} px it is ${over} px too wide`);
    const { violations } = await new AxeBuilder({ page }).analyze();
    const nodes = violations.flatMap(({ id, nodes: at }) => at.slice(0, 3).map((node) => ({ id, node })));
    faults.push(
      ...nodes.map(
        ({ id, node }) => `${width} px ${colorScheme}: ${id} at ${node.target.join(' ')}: ${node.failureSummary}`,
      ),
    );
  }
  return faults;
}

/** Where the keys were, whether it was seen there, and which main action it is, if any. */
interface Stop {
  readonly name: string;
  readonly isSeen: boolean;
  readonly main: number;
}

declare global {
  interface Window {
    sweepStops?: Stop[];
  }
}

/** Tab walks from the top until every main action was reached; what has the focus always shows it. */
async function keyboardFaults(page: Page): Promise<readonly string[]> {
  const mains = await page.evaluate(() => {
    const actions = [
      ...document.querySelectorAll<HTMLElement>('main :is(.main, [type="submit"]):is(a, button, input)'),
    ].filter((one) => !one.matches(':disabled') && one.checkVisibility());
    for (const [at, one] of actions.entries()) one.setAttribute('data-sweep', String(at));
    return actions.map((one) => one.textContent);
  });
  await page.evaluate(watchFocus);
  let stops: readonly Stop[] = [];
  for (let pressed = 0; pressed < MOST_STOPS; pressed += 25) {
    for (let step = 0; step < 25; step += 1) await page.keyboard.press('Tab');
    stops = await page.evaluate(() => window.sweepStops ?? []);
    const isRound = stops.length < pressed;
    if (isRound || new Set(stops.map(({ main }) => main).filter((main) => main >= 0)).size === mains.length) break;
  }
  const reached = new Set(stops.map(({ main }) => main));
  const unseen = new Set(stops.filter(({ isSeen }) => !isSeen).map(({ name }) => name));
  const missed = mains.filter((_, at) => !reached.has(at));
  return [
    ...[...unseen].map((name) => `${name} has the focus and does not show it`),
    ...missed.map((words) => `Tab never comes to “${words}”`),
  ];
}

/** Runs in the page: notes every element that takes the focus. */
function watchFocus(): void {
  const stops: Stop[] = [];
  window.sweepStops = stops;
  document.addEventListener('focusin', ({ target: at }) => {
    if (!(at instanceof HTMLElement)) return;
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(at);
    const isSeen = (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0) || boxShadow !== 'none';
    const words = (at.getAttribute('aria-label') ?? at.textContent ?? '').trim().slice(0, 40);
    stops.push({ name: `${at.tagName.toLowerCase()} ${words}`, isSeen, main: Number(at.dataset.sweep ?? -1) });
  });
}
