/** The state of an enquiry or quote: a tank that fills as it goes on, and the word beside it. */
export function StateMark({ state }: { readonly state: string }) {
  return (
    <span className="state" data-state={state}>
      {state}
    </span>
  );
}
