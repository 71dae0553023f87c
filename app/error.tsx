'use client';

interface ErrorPageProps {
  readonly reset: () => void;
}

/** What a screen shows when it could not be drawn; what was saved is not touched. */
export default function ErrorPage({ reset }: ErrorPageProps) {
  return (
    <div className="notice refusal" role="alert">
      <h1>This screen could not be drawn</h1>
      <p>What was saved is still there. Try again; if it fails twice, the log of the house says why.</p>
      <button type="button" onClick={reset}>
        Try again
      </button>
    </div>
  );
}
