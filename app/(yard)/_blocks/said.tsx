export interface Said {
  readonly tone: 'good' | 'warning' | 'refusal';
  readonly words: string;
}

const WORD = { good: 'Yes', warning: 'Look', refusal: 'No' } as const;

/** The answer to the last scan or press: a word, a sentence and a colour; read out as soon as it changes. */
export function SaidLine({ said }: { readonly said: Said | null }) {
  return (
    <div role="status" aria-live="assertive" className="said">
      {said === null ? null : (
        <p className={`notice ${said.tone}`}>
          <strong>{WORD[said.tone]}.</strong> {said.words}
        </p>
      )}
    </div>
  );
}
