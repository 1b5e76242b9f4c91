import type { IsbnCheck } from '../../../src/contract/isbns.ts';
import { CopyButton } from '../../ui/index.ts';

/**
 * Every way a number is written: hyphenated and with 'ISBN' before it as printed (ISO 2108), bare, in its old form of
 * ten where it has one, and as a URN (RFC 8254).
 */
function forms(check: IsbnCheck): { label: string; text: string }[] {
  const { hyphenated, isbn13, isbn10 } = check;
  if (hyphenated === null || isbn13 === null) return [];
  return [
    { label: 'Hyphenated', text: hyphenated },
    { label: 'As printed in the book', text: `ISBN ${hyphenated}` },
    { label: 'Thirteen digits', text: isbn13 },
    ...(isbn10 === null ? [] : [{ label: 'ISBN-10', text: isbn10 }]),
    { label: 'URN', text: `urn:isbn:${isbn13}` },
  ];
}

/** The written forms of a number, each with a button that copies it. */
export function WrittenForms({ check }: { check: IsbnCheck }) {
  return (
    <ul className="written" aria-label="Ways to write it">
      {forms(check).map(({ label, text }) => (
        <li key={label}>
          <span className="soft">{label}</span>
          <span className="mono written-text">{text}</span>
          <CopyButton small text={text} what={text} />
        </li>
      ))}
      {check.isbn10 === null ? <li className="soft">Numbers with the prefix 979 have no ISBN-10.</li> : null}
    </ul>
  );
}
