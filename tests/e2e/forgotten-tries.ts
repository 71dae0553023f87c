import Database from 'better-sqlite3';

/** What other stories asked from the same address is forgotten, so that none stands in the way of the next; each story keeps its own limits. */
export function forgetTries(): void {
  const raw = new Database(process.env.KITWRIGHT_DATABASE ?? '', { fileMustExist: true });
  raw.pragma('busy_timeout = 5000');
  raw.exec('DELETE FROM sign_in_try');
  raw.close();
}
