/*
 * An enquiry in a file: whose it is, its site, and the name of its list.
 * Invariant: the site is kept as it is written; site.ts reads it.
 * Not here: the list itself (lib/intake).
 * Read next: site.ts.
 */
import { z } from 'zod';
import { failed, ok, type Result } from '#lib/kernel/result.ts';

const text = z.string().trim().min(1);

const enquiryFileSchema = z.strictObject({
  id: text,
  title: text,
  /** Code of a customer. */
  customer: text,
  /** File name of the list. */
  list: text,
  site: z.record(text, z.unknown()),
});
export type EnquiryFile = z.infer<typeof enquiryFileSchema>;

export function parseEnquiryFile(json: unknown): Result<EnquiryFile> {
  const parsed = enquiryFileSchema.safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const sentence = parsed.error.issues.map((issue) => `Enquiry, ${issue.path.join('.')}: ${issue.message}.`).join(' ');
  return failed({ code: 'enquiry-unreadable', sentence });
}
