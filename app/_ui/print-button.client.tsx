'use client';

import type { ReactNode } from 'react';

/** Prints the screen; itself it never stands on paper. */
export function PrintButton({ children }: { readonly children: ReactNode }) {
  return (
    <button type="button" className="main no-print" onClick={() => window.print()}>
      {children}
    </button>
  );
}
