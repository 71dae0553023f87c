/*
 * Answers of the domain that may be "no": a value or a reason, never an exception.
 * Invariant: a failed result carries a stable code that callers may switch on and a sentence a person may read.
 * Not here: programmer errors (see invariant.ts).
 * Read next: finding.ts.
 */
export type Result<Value, Reason extends Refused = Refused> = Ok<Value> | Failed<Reason>;

export interface Ok<Value> {
  readonly ok: true;
  readonly value: Value;
}

export interface Failed<Reason> {
  readonly ok: false;
  readonly reason: Reason;
}

/** Why the answer is no: a stable code and a sentence that says what to do. */
export interface Refused {
  readonly code: string;
  readonly sentence: string;
}

export function ok<Value>(value: Value): Ok<Value> {
  return { ok: true, value };
}

export function failed<Reason extends Refused>(reason: Reason): Failed<Reason> {
  return { ok: false, reason };
}
