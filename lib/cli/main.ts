/*
 * The command line: plan, duty, why, rules and password over the same chain and services as the screens.
 * Invariant: results on standard output, messages on standard error; exit status 0, 2 or 3 as the usage says.
 * Not here: what the commands do (one file each).
 * Read next: arguments.ts, plan-command.ts.
 */
import { readArguments, USAGE } from './arguments.ts';
import { dutyCommand } from './duty-command.ts';
import { passwordCommand } from './password-command.ts';
import { planCommand } from './plan-command.ts';
import { rulesCommand } from './rules-command.ts';
import { whyCommand } from './why-command.ts';

/** A reader that has seen enough, such as `head`, closes the pipe: no fault of ours. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await main(process.argv.slice(2));

async function main(words: readonly string[]): Promise<number> {
  const read = readArguments(words);
  if (!read.ok) {
    process.stderr.write(`${read.reason.sentence}\n\n${USAGE}\n`);
    return 2;
  }
  const options = read.value;
  switch (options.command) {
    case 'plan':
      return planCommand(options);
    case 'duty':
      return dutyCommand(options);
    case 'why':
      return whyCommand(options);
    case 'rules':
      return rulesCommand(options);
    case 'password':
      return passwordCommand(options);
  }
}
