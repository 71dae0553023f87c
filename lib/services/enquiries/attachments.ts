/*
 * Keeps files with an enquiry, gives them back byte for byte, and puts them away.
 * Invariant: bytes never change and are proved by their hash when they are read; a file put away can be brought back.
 * Not here: the valve list (receive-list.ts).
 * Read next: open-enquiry-life.ts.
 */
import { findEnquiry } from '#db/queries/enquiries.ts';
import { type AttachmentRow, findAttachment, insertAttachment, putAttachmentAway } from '#db/queries/enquiry-life.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { noSuchEnquiry } from './enquiry-record.ts';

const NAME_CHARACTERS = 200;

interface NewFile {
  readonly enquiryId: number;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export function attachFile(
  context: Context,
  { enquiryId, fileName, bytes }: NewFile,
): Result<{ readonly id: number; readonly sha256: string }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  if (!findEnquiry(context.database.db, enquiryId)) return noSuchEnquiry(enquiryId);
  if (bytes.length === 0) return failed({ code: 'file-empty', sentence: 'The file is empty; choose another.' });
  if (bytes.length > LIMITS.attachment_bytes) {
    const most = LIMITS.attachment_bytes / 1024 / 1024;
    return failed({
      code: 'file-too-large',
      sentence: `A file may have at most ${most} MB; make it smaller or split it.`,
    });
  }
  const hash = sha256(bytes);
  const name = plainName(fileName);
  return context.database.db.transaction(
    (tx) => {
      const id = insertAttachment(tx, {
        enquiry_id: enquiryId,
        file_name: name,
        size_bytes: bytes.length,
        sha256: hash,
        bytes: Buffer.from(bytes),
        added_by: context.actor.name,
        added_at: timestamp(context),
      });
      const detail = { file: id, name, sha256: hash };
      logChange(tx, { context, deed: { action: 'file attached', subject: `enquiry ${enquiryId}`, detail } });
      return ok({ id, sha256: hash });
    },
    { behavior: 'immediate' },
  );
}

interface FileKey {
  readonly enquiryId: number;
  readonly fileId: number;
}

export function readAttachment(
  context: Context,
  key: FileKey,
): Result<{ readonly fileName: string; readonly bytes: Uint8Array }> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const file = loadFile(context, key);
  if (!file.ok) return file;
  invariant(sha256(file.value.bytes) === file.value.sha256, 'The stored file does not agree with its hash.');
  return ok({ fileName: file.value.file_name, bytes: file.value.bytes });
}

export function putFileAway(
  context: Context,
  { removed, ...key }: FileKey & { readonly removed: 'yes' | 'no' },
): Result<{ readonly removed: 'yes' | 'no' }> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const file = loadFile(context, key);
  if (!file.ok) return file;
  return context.database.db.transaction((tx) => {
    putAttachmentAway(tx, { id: key.fileId, at: removed === 'yes' ? timestamp(context) : null });
    const action = removed === 'yes' ? 'file put away' : 'file brought back';
    logChange(tx, { context, deed: { action, subject: `enquiry ${key.enquiryId}`, detail: { file: key.fileId } } });
    return ok({ removed });
  });
}

function loadFile(context: Context, { enquiryId, fileId }: FileKey): Result<AttachmentRow> {
  const file = findAttachment(context.database.db, fileId);
  if (file && file.enquiry_id === enquiryId) return ok(file);
  return failed({ code: 'no-such-file', sentence: 'That file is not there; load the page again.' });
}

/** The last part of a path, without control characters, short enough to be shown. */
function plainName(fileName: string): string {
  const last = fileName.split(/[\\/]/).at(-1) ?? '';
  const plain = last.replace(/[\p{Cc}\p{Cf}]/gu, '').trim();
  return plain === '' ? 'file' : plain.slice(-NAME_CHARACTERS);
}
