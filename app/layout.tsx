import '@fontsource/noto-sans/400.css';
import '@fontsource/noto-sans/600.css';
import './_ui/house.css';
import './_ui/elements.css';
import './_ui/screens.css';
import type { Metadata } from 'next';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { unitSystem } from './_lib/unit-system.ts';
import { UnitsProvider } from './_ui/shown-units.client.tsx';
import { UnitSwitch } from './_ui/unit-switch.tsx';

export const metadata: Metadata = { title: { default: 'Kitwright', template: '%s · Kitwright' } };

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const system = await unitSystem();
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
          <UnitSwitch system={system} />
        </header>
        <main id="content">
          <UnitsProvider system={system}>{children}</UnitsProvider>
        </main>
      </body>
    </html>
  );
}
