/** Systems as a browser names them in its user-agent header; the first that is found counts (a phone also names its kin). */
const SYSTEMS = [
  ['Android', 'Android'],
  ['iPhone', 'iPhone'],
  ['iPad', 'iPad'],
  ['Windows', 'Windows'],
  ['Mac OS X', 'macOS'],
  ['CrOS', 'ChromeOS'],
  ['Linux', 'Linux'],
] as const;

/** The kind of machine that a browser says it runs on: enough to know one's own again. */
export function browserName(userAgent: string): string {
  const system = SYSTEMS.find(([sign]) => userAgent.includes(sign));
  return system === undefined ? 'Unknown browser' : `Browser on ${system[1]}`;
}
