import { describe, expect, it } from 'vitest';
import { OPEN_PAGES, OPEN_ROOTS, OPEN_ROUTES } from '#app/_lib/open-paths.ts';
import { readRepositoryFile, repositoryFiles } from '#tests/support/repository.ts';

/** What asks who it is: pages and routes call one of these; a page that is open calls `asked` by itself. */
const ASKS = /await (asking|askedBySomeone)\(\)/;

const files = repositoryFiles();
const pages = files.filter((path) => /^app\/(.*\/)?page\.tsx$/.test(path));
const routes = files.filter((path) => /^app\/(.*\/)?route\.ts$/.test(path));
const layouts = files.filter((path) => /^app\/.+\/layout\.tsx$/.test(path));

/** What is open below a root asks for its context here; the services behind it ask for a link or a key. */
const ASKS_STRANGER = /await (strangerAsks|programAsks)\(/;

const isOpenBelow = (address: string): boolean =>
  OPEN_ROOTS.some((root) => address === root || address.startsWith(`${root}/`));

/** `app/(desk)/enquiries/[id]/page.tsx` answers at `/enquiries/[id]`. */
function addressOf(path: string): string {
  const folders = path.split('/').slice(1, -1);
  return `/${folders.filter((folder) => !folder.startsWith('(')).join('/')}`;
}

/** The text of each exported handler or of the page itself, up to the next export. */
function handlersOf(text: string): readonly string[] {
  return text
    .split(/^(?=export )/m)
    .filter((part) => /^export (async )?function (GET|HEAD|POST|PUT|PATCH|DELETE)\b|^export default /.test(part));
}

describe('every door asks who it is', () => {
  it('there are pages and routes to look at', () => {
    expect(pages.length).toBeGreaterThan(10);
    expect(routes.length).toBeGreaterThan(20);
  });

  it('every page but those that are open', () => {
    const open = [...OPEN_PAGES, '/choose-password'];
    const silent = pages.filter(
      (path) =>
        !open.includes(addressOf(path)) &&
        !(isOpenBelow(addressOf(path)) ? ASKS_STRANGER : ASKS).test(readRepositoryFile(path)),
    );
    expect(silent).toEqual([]);
  });

  it('every layout below the first', () => {
    const silent = layouts.filter(
      (path) => !(isOpenBelow(addressOf(path)) ? ASKS_STRANGER : ASKS).test(readRepositoryFile(path)),
    );
    expect(silent).toEqual([]);
  });

  it('every handler of every route but those that are open', () => {
    const silent = routes
      .filter((path) => !OPEN_ROUTES.includes(addressOf(path)))
      .flatMap((path) => {
        const text = readRepositoryFile(path);
        const handlers = handlersOf(text);
        const asks = isOpenBelow(addressOf(path)) ? ASKS_STRANGER : ASKS;
        const bad = handlers.length === 0 || (handlers.some((handler) => !asks.test(handler)) && !asksInside(text));
        return bad ? [path] : [];
      });
    expect(silent).toEqual([]);
  });

  it('every server action', () => {
    const actions = files.filter(
      (path) => /^app\/.*\.tsx?$/.test(path) && /^'use server'/m.test(readRepositoryFile(path)),
    );
    expect(actions.length).toBeGreaterThan(2);
    const silent = actions.filter((path) => !/await (asked|asking|askedBySomeone)\(\)/.test(readRepositoryFile(path)));
    expect(silent).toEqual([]);
  });

  it('what is open is there, and nothing else is', () => {
    const addresses = [...pages, ...routes].map(addressOf);
    expect([...OPEN_PAGES, ...OPEN_ROUTES].filter((address) => !addresses.includes(address))).toEqual([]);
    expect(OPEN_ROUTES).toEqual(['/api/ping']);
    expect(OPEN_PAGES).toEqual(['/sign-in']);
    expect(OPEN_ROOTS).toEqual(['/hire', '/api/v1/orders', '/api/v1/openapi.json']);
    for (const root of OPEN_ROOTS) expect(addresses).toContain(root);
  });
});

/** Handlers that share one function below, which asks. */
function asksInside(text: string): boolean {
  const [, ...below] = text.split(/^(?=(?:async )?function )/m);
  return below.some((part) => ASKS.test(part));
}

describe('every verb asks whether it may', () => {
  /** Functions of the services, by name, with their text. Verbs take `context` first and answer a Result. */
  const functions = files
    .filter((path) => /^lib\/services\/(?:[^/]+\/)?[^/]+\.ts$/.test(path))
    .flatMap((path) =>
      readRepositoryFile(path)
        .split(/^(?=(?:export )?(?:async )?function )/m)
        .map((part) => ({ path, name: /^(?:export )?(?:async )?function (\w+)/.exec(part)?.[1] ?? '', part }))
        .filter(({ name }) => name !== ''),
    );
  const verbs = functions.filter(({ part }) =>
    /^export (async )?function \w+(<[^>]*>)?\(\s*context: Context[\s\S]*?\): (Promise<)?Result</.test(part),
  );

  it('there are verbs to look at', () => {
    expect(verbs.length).toBeGreaterThan(25);
  });

  it('a verb that a page, a route or an action calls authorises itself or hands its context on to one that does', () => {
    const asked = new Set(
      files
        .filter((path) => /^app\/.*\.tsx?$/.test(path))
        .flatMap((path) => [...readRepositoryFile(path).matchAll(/import \{([^}]*)\} from '#lib\/services\//g)])
        .flatMap(([, names = '']) => names.split(',').map((name) => name.replace(/^\s*type\s+/, '').trim())),
    );
    const called = verbs.filter(({ name }) => asked.has(name));
    expect(called.length).toBeGreaterThan(20);
    const careful = carefulOnes(functions);
    const silent = called.filter(({ name }) => !careful.has(name));
    expect(silent.map(({ path, name }) => `${path}: ${name}`)).toEqual([]);
  });
});

interface Written {
  readonly name: string;
  readonly part: string;
}

/** Names of the functions that authorise, or that hand the context on to one that does. */
function carefulOnes(functions: readonly Written[]): ReadonlySet<string> {
  const careful = new Set(functions.filter(({ part }) => part.includes('authorise(context')).map(({ name }) => name));
  for (let before = -1; before !== careful.size; ) {
    before = careful.size;
    for (const { name, part } of functions)
      if ([...part.matchAll(/(\w+)\(context\b/g)].some(([, called = '']) => called !== name && careful.has(called)))
        careful.add(name);
  }
  return careful;
}
