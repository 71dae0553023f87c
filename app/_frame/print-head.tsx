import { ShownDate } from '#app/_ui/shown-forms.client.tsx';

/** Stands at the head of a printed screen only: a screen on paper is a copy of its day, not a paper of the house. */
export function PrintHead() {
  return (
    <p className="print-head">
      <strong>Kitwright</strong>
      <span>
        Screen as of <ShownDate on={new Date().toISOString().slice(0, 10)} />; not an issued paper
      </span>
    </p>
  );
}
