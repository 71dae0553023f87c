/** Looks for words in everything; a plain form, so that it works before anything else has loaded. */
export function SearchBox() {
  return (
    <form action="/search" className="search-box">
      <input name="q" type="search" aria-label="Search everything" placeholder="Search" size={14} data-search-box />
    </form>
  );
}
