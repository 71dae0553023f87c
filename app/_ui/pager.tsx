interface PagerProps {
  readonly page: number;
  readonly pages: number;
  readonly total: number;
  /** What is counted, in the plural. */
  readonly what: string;
  readonly hrefOf: (page: number) => string;
}

/** Where one is in a long list; the page stands in the address. */
export function Pager({ page, pages, total, what, hrefOf }: PagerProps) {
  return (
    <nav className="tools" aria-label="Pages" style={{ marginTop: 'var(--space-3)', alignItems: 'center' }}>
      {page > 1 && (
        <a className="button" href={hrefOf(page - 1)} rel="prev">
          Earlier
        </a>
      )}
      <span className="soft">
        {pages === 1 ? `${total} ${what}` : `Page ${page} of ${pages}, ${total} ${what} in all`}
      </span>
      {page < pages && (
        <a className="button" href={hrefOf(page + 1)} rel="next">
          Further
        </a>
      )}
    </nav>
  );
}
