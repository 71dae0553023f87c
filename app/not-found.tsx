import Link from 'next/link';

export default function NotFoundPage() {
  return (
    <div className="empty">
      <h1>Nothing is here</h1>
      <p>The address names no screen, or what it named was removed.</p>
      <Link href="/enquiries">To the enquiries</Link>
    </div>
  );
}
