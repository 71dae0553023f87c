/*
 * Keeps photographs of a piece at its return, gives them back byte for byte, and puts them away.
 * Invariant: what is kept is a picture by its own first bytes, whatever it is called; bytes never change and are proved by their hash.
 * Not here: files of an enquiry (../../enquiries/attachments.ts).
 * Read next: check-in.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findPhoto, insertPhoto, type PhotoRow, photosOfPieces, putPhotoAway } from '#db/queries/returns.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { whoIs } from './open-return.ts';
import { standingPiece } from './undo-check-in.ts';

/** By the first bytes of the file (the formats' own signatures). */
const PICTURES: readonly { readonly mime: string; readonly at: number; readonly bytes: readonly number[] }[] = [
  { mime: 'image/jpeg', at: 0, bytes: [0xff, 0xd8, 0xff] },
  { mime: 'image/png', at: 0, bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { mime: 'image/webp', at: 8, bytes: [0x57, 0x45, 0x42, 0x50] },
];

interface NewPhoto {
  readonly pieceId: number;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export function addPhoto(context: Context, photo: NewPhoto): Result<{ readonly id: number }> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => keepPhoto(tx, { context, photo }), { behavior: 'immediate' });
}

interface Keeping {
  readonly context: Context;
  readonly photo: NewPhoto;
}

/** Within a transaction of whoever asks. */
export function keepPhoto(
  tx: DbOrTx,
  { context, photo: { pieceId, fileName, bytes } }: Keeping,
): Result<{ readonly id: number }> {
  const piece = standingPiece(tx, pieceId);
  if (!piece.ok) return piece;
  if (piece.value.note_id !== null)
    return failed({
      code: 'piece-settled',
      sentence: 'It stands on a return note by now; nothing more is added to it.',
    });
  if (bytes.length > LIMITS.photo_bytes)
    return failed({
      code: 'photo-too-large',
      sentence: `A photograph may have at most ${LIMITS.photo_bytes / 1024 / 1024} MB; take a smaller one.`,
    });
  const mime = PICTURES.find(({ at, bytes: mark }) => mark.every((byte, index) => bytes[at + index] === byte))?.mime;
  if (mime === undefined)
    return failed({ code: 'photo-unreadable', sentence: 'That is no photograph: JPEG, PNG and WebP are kept.' });
  const held = photosOfPieces(tx, [pieceId]).filter(({ removed_at }) => removed_at === null);
  if (held.length >= LIMITS.photos_of_piece)
    return failed({
      code: 'photos-enough',
      sentence: `A piece has at most ${LIMITS.photos_of_piece} photographs; put one away first.`,
    });
  const id = insertPhoto(tx, {
    piece_id: pieceId,
    file_name: fileName.replace(/[\p{Cc}\p{Cf}\\/]/gu, '').slice(-120) || 'photograph',
    mime,
    size_bytes: bytes.length,
    sha256: sha256(bytes),
    bytes: Buffer.from(bytes),
    added_at: timestamp(context),
    ...whoIs(context),
  });
  logChange(tx, {
    context,
    deed: { action: 'photograph added', subject: `piece ${pieceId}`, detail: { photo: id } },
  });
  return ok({ id });
}

export function readPhoto(
  context: Context,
  photoId: number,
): Result<{ readonly mime: string; readonly bytes: Uint8Array }> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const photo = photoWith(context, photoId);
  if (!photo.ok) return photo;
  invariant(sha256(photo.value.bytes) === photo.value.sha256, 'The stored photograph does not agree with its hash.');
  return ok({ mime: photo.value.mime, bytes: photo.value.bytes });
}

interface PuttingAway {
  readonly photoId: number;
  readonly removed: 'yes' | 'no';
}

export function removePhoto(
  context: Context,
  { photoId, removed }: PuttingAway,
): Result<{ readonly removed: 'yes' | 'no' }> {
  const allowed = authorise(context, 'take equipment back');
  if (!allowed.ok) return allowed;
  const photo = photoWith(context, photoId);
  if (!photo.ok) return photo;
  return context.database.db.transaction((tx) => {
    putPhotoAway(tx, { id: photoId, at: removed === 'yes' ? timestamp(context) : null });
    const action = removed === 'yes' ? 'photograph put away' : 'photograph brought back';
    logChange(tx, { context, deed: { action, subject: `piece ${photo.value.piece_id}`, detail: { photo: photoId } } });
    return ok({ removed });
  });
}

function photoWith(context: Context, id: number): Result<PhotoRow> {
  const photo = findPhoto(context.database.db, id);
  return photo
    ? ok(photo)
    : failed({ code: 'no-such-photograph', sentence: 'That photograph is not there; load the page again.' });
}
