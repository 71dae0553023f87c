'use client';

export function PrintButton() {
  return (
    <p className="tools">
      <button type="button" className="main" onClick={() => window.print()}>
        Print
      </button>
    </p>
  );
}
