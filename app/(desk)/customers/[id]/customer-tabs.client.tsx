'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';

const TABS = [
  { path: '', label: 'At a glance' },
  { path: '/edit', label: 'Address & terms' },
  { path: '/contacts', label: 'Contacts' },
  { path: '/sites', label: 'Sites' },
  { path: '/rules', label: 'Rules' },
  { path: '/keys', label: 'Programs' },
  { path: '/dealings', label: 'Enquiries & quotes' },
] as const;

export function CustomerTabs({ id }: { readonly id: number }) {
  const here = usePathname();
  return (
    <nav className="tabs" aria-label="Customer">
      {TABS.map(({ path, label }) => {
        const href = `/customers/${id}${path}`;
        const isHere = path === '' ? here === href : here.startsWith(href);
        return (
          <Link key={path} href={href} aria-current={isHere ? 'page' : undefined}>
            {label}
          </Link>
        );
      })}
    </nav>
  );
}
