import type { ReactNode } from 'react';

/** The drawings of the interface's own signs, all on a 16 × 16 field and in the colour of the text. */
const SIGNS = {
  add: <path d="M8 3v10M3 8h10" />,
  close: <path d="m4 4 8 8M12 4l-8 8" />,
  copy: <path d="M6 3h7v8.5M3 5.5h7V13H3z" />,
  down: <path d="m3.5 6 4.5 4.5L12.5 6" />,
  keys: <path d="M2 4.5h12v7H2zM4.5 7h.01M8 7h.01M11.5 7h.01M5 9.3h6" />,
  menu: <path d="M2.5 4h11M2.5 8h7M2.5 12h9" />,
  more: <path d="M3 8h.01M8 8h.01M13 8h.01" strokeWidth="2" />,
  next: <path d="m6 3.5 4.5 4.5L6 12.5" />,
  previous: <path d="M10 3.5 5.5 8l4.5 4.5" />,
  search: <path d="M2.8 7a4.2 4.2 0 1 0 8.4 0 4.2 4.2 0 1 0-8.4 0M10.2 10.2l3.3 3.3" />,
  day: <path d="M2.5 4h11v9.5h-11zM2.5 7h11M5.5 2v3M10.5 2v3" />,
  padlock: (
    <>
      <path d="M3 7.5h10v6H3zM8 9.7v1.6" />
      <path d="M5 7.5V5.2C5 3.4 6.2 2.2 8 2.2s3 1.2 3 3v2.3" />
    </>
  ),
} satisfies Record<string, ReactNode>;

export type SignName = keyof typeof SIGNS;

/** One of the interface's own signs; always beside a word or under a text label. */
export function Sign({ name }: { name: SignName }) {
  return (
    <svg className="sign" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      {SIGNS[name]}
    </svg>
  );
}
