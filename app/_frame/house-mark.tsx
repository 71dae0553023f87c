/** The mark of the house: a stem seen from above, held from four sides. It says nothing; the name beside it does. */
export function HouseMark() {
  return (
    <svg viewBox="0 0 32 32" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="3">
      <path d="M16 3v8m0 10v8M3 16h8m10 0h8" />
      <circle cx="16" cy="16" r="5" />
      <path
        d="M7.5 7.5a12 12 0 0 1 4-2.6M24.5 7.5a12 12 0 0 0-4-2.6M7.5 24.5a12 12 0 0 0 4 2.6M24.5 24.5a12 12 0 0 1-4 2.6"
        strokeWidth="2"
      />
    </svg>
  );
}
