'use client';

import Link from 'next/link';

interface ErrorPageProps {
  readonly error: { readonly digest?: string };
  readonly reset: () => void;
}

/** What a screen shows when it could not be drawn; what was saved is not touched. */
export default function ErrorPage({ error, reset }: ErrorPageProps) {
  return (
    <div className="notice refusal" role="alert">
      <h1>This screen could not be drawn</h1>
      <p>
        What was saved is still there. Try again; if it fails twice, the log of the house says why
        {error.digest === undefined ? '' : ` under the reference ${error.digest}`}.
      </p>
      <p className="tools">
        <button type="button" className="main" onClick={reset}>
          Try again
        </button>
        <Link className="button" href="/">
          To the home page
        </Link>
      </p>
    </div>
  );
}
