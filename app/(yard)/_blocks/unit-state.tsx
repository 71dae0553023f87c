const TONE: Readonly<Record<string, string>> = {
  ready: 'good',
  quarantine: 'warning',
  workshop: 'warning',
  lost: 'refusal',
};

/** The state of a unit: its word, in the colour of what may be done with it. */
export function UnitState({ state }: { readonly state: string }) {
  return <span className={`mark ${TONE[state] ?? ''}`}>{state}</span>;
}
