import type { Metadata } from 'next';
import Link from 'next/link';

export const metadata: Metadata = { title: 'Nothing is here' };

export default function NotFoundPage() {
  return (
    <div className="empty">
      <UnheldStem />
      <h1>Nothing is here</h1>
      <p>The address names no screen, or what it named was removed.</p>
      <Link className="button main" href="/">
        To the home page
      </Link>{' '}
      <Link className="button" href="/enquiries">
        To the enquiries
      </Link>
    </div>
  );
}

/** A valve's square with no wheel on it. */
function UnheldStem() {
  return (
    <svg viewBox="0 0 96 64" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="2">
      <ellipse cx="48" cy="14" rx="34" ry="9" strokeDasharray="4 4" />
      <path d="M42 22h12v16H42zM36 38h24v6H36zM30 44h36l6 16H24z" />
    </svg>
  );
}
