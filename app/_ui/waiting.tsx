/** A screen that is on its way: bars where its lines will stand, and words for those who do not see them. */
export function Waiting({ what }: { readonly what: string }) {
  return (
    <div className="waiting" role="status">
      <p className="soft">{what}</p>
      <span />
      <span />
      <span />
      <span />
      <span />
      <span />
    </div>
  );
}
