// Pages one at a time: back, which of how many, on.

/** Words of a pager. */
interface PagerWords {
  readonly before: string;
  readonly after: string;
  readonly page: (page: number, of: number) => string;
}

/** Turns pages; `page` from 0. */
export function Pager({
  words,
  page,
  count,
  onPage,
}: {
  words: PagerWords;
  page: number;
  count: number;
  onPage: (page: number) => void;
}) {
  return (
    <span className="ground-pages">
      <button
        type="button"
        aria-label={words.before}
        disabled={page === 0}
        onClick={() => onPage(page - 1)}
      >
        ‹
      </button>
      <span>{words.page(page + 1, count)}</span>
      <button
        type="button"
        aria-label={words.after}
        disabled={page === count - 1}
        onClick={() => onPage(page + 1)}
      >
        ›
      </button>
    </span>
  );
}
