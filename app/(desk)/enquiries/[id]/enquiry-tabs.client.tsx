'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';

const TABS = [
  { path: '', label: 'Schedule' },
  { path: '/list', label: 'List' },
  { path: '/site', label: 'Site' },
  { path: '/kits', label: 'Kits' },
  { path: '/papers', label: 'Price & papers' },
  { path: '/found', label: 'As found' },
  { path: '/notes', label: 'Notes & files' },
  { path: '/history', label: 'History' },
] as const;

export function EnquiryTabs({ id }: { readonly id: number }) {
  const here = usePathname();
  return (
    <nav className="tabs" aria-label="Enquiry">
      {TABS.map(({ path, label }) => {
        const href = `/enquiries/${id}${path}`;
        const current =
          path === ''
            ? here === href || here.startsWith(`${href}/lines`) || here.startsWith(`${href}/schedule`)
            : here.startsWith(href);
        return (
          <Link key={path} href={href} aria-current={current ? 'page' : undefined}>
            {label}
          </Link>
        );
      })}
    </nav>
  );
}
