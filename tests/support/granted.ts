import { expect } from 'vitest';
import type { Result } from '#lib/kernel/result.ts';

/** The value of a result that must be good; a refusal fails the test with its sentence. */
export function granted<Value>(result: Result<Value>): Value {
  if (result.ok) return result.value;
  expect.fail(`${result.reason.code}: ${result.reason.sentence}`);
}

/** The code of a refusal; empty where it was granted. */
export const codeOf = (result: Result<unknown>): string => (result.ok ? '' : result.reason.code);
