/** The product's mark: a page with a thick and a thin rule, and its ribbon. */
export function Mark() {
  return (
    <svg className="mark" viewBox="6 2 20 28" width="21" height="29" aria-hidden="true" focusable="false">
      <path className="mark-page" d="M6 2h20v28H6z" />
      <path className="mark-rules" d="M10 8h12v2.5H10zM10 12h12v1H10z" />
      <path className="mark-ribbon" d="M17 16h5v12l-2.5-2.5L17 28z" />
    </svg>
  );
}
