/*
 * What a quote is worked out and drawn with: version of the program, and the rules that were asked.
 * Invariant: the version names the sources of a build; two builds of other sources never share it.
 * Not here: rates, house and equipment, which are frozen as they are.
 * Read next: enquiry-papers.ts.
 */
import { listRules } from '#lib/rules/all-rules.ts';
import { sha256 } from '#lib/services/sha256.ts';
import packed from '../../../package.json' with { type: 'json' };

/** `0.1.0+4be1c6d2a9f3`: the released version, and the first digits of the hash of the sources it was built from. */
export function programVersion(): string {
  return `${packed.version}+${(process.env.KITWRIGHT_SOURCES ?? 'unbuilt').slice(0, 12)}`;
}

export function rulesAsked(): { readonly count: number; readonly sha256: string } {
  const rules = listRules();
  return { count: rules.length, sha256: sha256(JSON.stringify(rules)) };
}
