import '@fontsource/noto-sans/400.css';
import '@fontsource/noto-sans/600.css';
import './_ui/house.css';
import './_ui/elements.css';
import './_ui/screens.css';
import type { Metadata } from 'next';
import Link from 'next/link';
import type { ReactNode } from 'react';

export const metadata: Metadata = { title: { default: 'Kitwright', template: '%s · Kitwright' } };

export default function RootLayout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en-GB">
      <body>
        <a className="skip" href="#content">
          To the content
        </a>
        <header className="top">
          <Link className="house-name" href="/enquiries">
            Kitwright
          </Link>
          <nav aria-label="Areas">
            <Link href="/enquiries">Enquiries</Link>
            <Link href="/equipment">Equipment</Link>
            <Link href="/rules">Rules</Link>
          </nav>
        </header>
        <main id="content">{children}</main>
      </body>
    </html>
  );
}
