/** What was refused and why; nothing at all while all is well. */
export function Trouble({ sentence }: { readonly sentence: string }) {
  if (sentence === '') return null;
  return (
    <p className="notice refusal" role="alert">
      {sentence}
    </p>
  );
}
