/*
 * What the database itself refuses about deliveries, returns and work orders: changed notes, photographs and despatch advices, and anything deleted.
 * Invariant: what was issued or seen stays; what was undone is marked, never taken away.
 * Not here: bookings (booking-triggers.ts).
 * Read next: triggers.ts.
 */
export function returnTriggers(): Readonly<Record<string, string>> {
  return {
    return_note_frozen_update: refuse({ when: 'BEFORE UPDATE ON return_note', why: 'an issued return note is frozen' }),
    return_note_frozen_delete: refuse({ when: 'BEFORE DELETE ON return_note', why: 'an issued return note is frozen' }),
    return_photo_kept_update: refuse({
      when: 'BEFORE UPDATE ON return_photo WHEN NEW.bytes IS NOT OLD.bytes OR NEW.sha256 IS NOT OLD.sha256',
      why: 'a photograph is kept as it came',
    }),
    return_photo_kept_delete: refuse({ when: 'BEFORE DELETE ON return_photo', why: 'a photograph is kept as it came' }),
    return_piece_kept_delete: refuse({
      when: 'BEFORE DELETE ON return_piece',
      why: 'a check-in is undone, never deleted',
    }),
    work_order_kept_delete: refuse({
      when: 'BEFORE DELETE ON work_order',
      why: 'a work order is withdrawn, never deleted',
    }),
    delivery_despatch_kept: refuse({
      when: 'BEFORE UPDATE ON delivery WHEN OLD.despatch_xml IS NOT NULL AND NEW.despatch_xml IS NOT OLD.despatch_xml',
      why: 'a despatch advice is kept as it was sent',
    }),
    return_decision_kept: refuse({
      when: 'BEFORE UPDATE ON return_decision WHEN OLD.note_id IS NOT NULL',
      why: 'what stands on a note is decided',
    }),
    return_decision_kept_delete: refuse({
      when: 'BEFORE DELETE ON return_decision WHEN OLD.note_id IS NOT NULL',
      why: 'what stands on a note is decided',
    }),
  };
}

function refuse({ when, why }: { readonly when: string; readonly why: string }): string {
  return `${when} BEGIN SELECT RAISE(ABORT, '${why}'); END`;
}
