import { asking } from '#app/_lib/asking.ts';
import type { BookingParams } from '#app/_lib/booking-params.ts';
import { problem, respond } from '#app/_lib/respond.ts';
import { readUploadedPhoto } from '#app/_lib/uploaded-photo.ts';
import { photoRequest } from '#lib/contracts/yard-scan.ts';
import { failed } from '#lib/kernel/result.ts';
import { takePhoto } from '#lib/services/yard/back/take-photo.ts';

/** A photograph that a device kept until the line was there; the same key gets the same answer. */
export async function POST(request: Request, { params }: BookingParams): Promise<Response> {
  const context = await asking();
  const sent = await readUploadedPhoto(request);
  if (!sent.ok) return problem(sent);
  const { form, file, bytes } = sent.value;
  const asked = photoRequest.safeParse({ key: form.get('key'), serial: form.get('serial') });
  if (!asked.success)
    return problem(failed({ code: 'photo-unnamed', sentence: 'Name the serial number of the piece it shows.' }));
  return respond(takePhoto(context, { number: (await params).number, ...asked.data, fileName: file.name, bytes }), 201);
}
