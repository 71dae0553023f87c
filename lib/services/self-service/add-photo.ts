/*
 * A photo of a valve, kept with the enquiry for the Desk to look at.
 * Invariant: nothing is read out of a photo; only pictures by their own first bytes are taken, and no more than a limit each.
 * Not here: other files (../enquiries/attachments.ts).
 * Read next: open-link.ts.
 */
import { attachmentsOf } from '#db/queries/enquiry-life.ts';
import { findLine } from '#db/queries/schedule.ts';
import { writeLineAnswer } from '#db/queries/self-orders.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { attachFile } from '#lib/services/enquiries/attachments.ts';
import { type LinkAsked, openToChange } from './open-link.ts';
import { noSuchValve } from './order-lines.ts';
import { takeTurn } from './self-throttle.ts';

export interface ValvePhoto extends LinkAsked {
  readonly lineId: number;
  readonly bytes: Uint8Array;
}

export function addPhoto(context: Context, input: ValvePhoto): Result<{ readonly photoId: number }> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openToChange(context, input);
  if (!opened.ok) return opened;
  const turn = takeTurn(context, { turn: 'send a file', who: `link ${opened.value.link.id}` });
  if (!turn.ok) return turn;
  const { desk, order } = opened.value;
  const enquiryId = order.enquiry_id;
  const { db } = context.database;
  if (findLine(db, { enquiryId, lineId: input.lineId }) === undefined) return noSuchValve();
  const kind = pictureKind(input.bytes);
  if (kind === null)
    return failed({ code: 'photo-unreadable', sentence: 'That is no photo: send a JPEG, PNG, WebP or HEIC picture.' });
  if (input.bytes.length > LIMITS.self_service_file_bytes)
    return failed({
      code: 'file-too-large',
      sentence: `A photo may have at most ${LIMITS.self_service_file_bytes / 1024 / 1024} MB; take a smaller one.`,
    });
  if (attachmentsOf(db, enquiryId).length >= LIMITS.self_service_photos)
    return failed({
      code: 'too-many-files',
      sentence: `An order takes at most ${LIMITS.self_service_photos} photos.`,
    });
  const kept = attachFile(desk, { enquiryId, fileName: `valve-${input.lineId}.${kind}`, bytes: input.bytes });
  if (!kept.ok) return kept;
  writeLineAnswer(db, { lineId: input.lineId, set: { photo_id: kept.value.id } });
  return ok({ photoId: kept.value.id });
}

/** By the first bytes of the formats themselves; a name or a declared type proves nothing. */
function pictureKind(bytes: Uint8Array): 'jpg' | 'png' | 'webp' | 'heic' | null {
  const starts = (...first: readonly number[]): boolean => first.every((byte, index) => bytes[index] === byte);
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.slice(from, to));
  if (starts(0xff, 0xd8, 0xff)) return 'jpg';
  if (starts(0x89, 0x50, 0x4e, 0x47)) return 'png';
  if (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') return 'webp';
  if (text(4, 8) === 'ftyp' && /^(heic|heix|mif1|msf1)$/.test(text(8, 12))) return 'heic';
  return null;
}
