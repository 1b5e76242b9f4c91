import type { ReactNode } from 'react';

/*
 * One family of outlines for each kind of thing (square for numbers, circle for formats, pennant for
 * listings, diamond for tasks, triangle for findings); within a family the filling tells how far it is.
 */
const RING = 'M8 2.75a5.25 5.25 0 1 1 0 10.5 5.25 5.25 0 0 1 0-10.5z';
const SQUARE = 'M3.25 3.25h9.5v9.5h-9.5z';
const OUT = 'M2.25 3.75h7.5L14 8l-4.25 4.25h-7.5z';
const BACK = 'M13.75 3.75h-7.5L2 8l4.25 4.25h7.5z';
const DIAMOND = 'M8 2l6 6-6 6-6-6z';
const TRIANGLE = 'M8 2.25 14.25 13.5H1.75z';

const line = (d: string) => <path d={d} />;
const filled = (d: string) => <path d={d} className="shape-filled" />;
const dashed = (d: string) => <path d={d} className="shape-dashed" />;

const both = (...parts: ReactNode[]): ReactNode =>
  parts.map((part, index) => <g key={String(index)}>{part}</g>);

export const SHAPES = {
  number: {
    free: line(SQUARE),
    reserved: both(line(SQUARE), filled('M3.25 3.25h9.5l-9.5 9.5z')),
    assigned: filled(SQUARE),
    spent: both(line(SQUARE), line('M1.5 14.5l13-13')),
  },
  format: {
    planned: dashed(RING),
    committed: both(line(RING), filled('M8 6.25a1.75 1.75 0 1 1 0 3.5 1.75 1.75 0 0 1 0-3.5z')),
    proofing: both(line(RING), filled('M8 2.75v10.5a5.25 5.25 0 0 1 0-10.5z')),
    live: filled(RING),
    retiring: both(line(RING), filled('M3 9.25h10a5.25 5.25 0 0 1-10 0z')),
    retired: both(line(RING), line('M.75 8h14.5')),
    cancelled: both(line(RING), line('m5.5 5.5 5 5M10.5 5.5l-5 5')),
  },
  listing: {
    unsent: dashed(OUT),
    sent: line(OUT),
    proof: both(line(OUT), filled('M6.5 6.25a1.75 1.75 0 1 1 0 3.5 1.75 1.75 0 0 1 0-3.5z')),
    cleared: both(line(OUT), filled('M2.25 3.75H8v8.5H2.25z')),
    selling: filled(OUT),
    leaving: both(line(BACK), filled('M13.75 3.75H8v8.5h5.75z')),
    gone: both(line(BACK), line('M4.5 14.5l8-13')),
  },
  task: {
    open: line(DIAMOND),
    waiting: both(line('M3.5 2.5h9L3.5 13.5h9z'), filled('M8 8l4.5 5.5h-9z')),
    done: filled(DIAMOND),
    dropped: both(line(DIAMOND), line('M2 14 14 2')),
  },
  severity: {
    'must fix': both(filled(TRIANGLE), <path key="bar" d="M8 6.25v3.5M8 11.6v.01" className="shape-cut" />),
    'should fix': both(line(TRIANGLE), line('M8 6.5v3.25M8 11.6v.01')),
    note: line('M2.5 4h11M2.5 8h11M2.5 12h6'),
  },
} satisfies Record<string, Record<string, ReactNode>>;

export type NoticeTone = 'note' | 'care' | 'stop' | 'done';

const NOTICE_SHAPES: Record<NoticeTone, ReactNode> = {
  note: SHAPES.severity.note,
  care: SHAPES.severity['should fix'],
  stop: SHAPES.severity['must fix'],
  done: line('M2.5 8.5 6.5 12.5 13.5 3.5'),
};

/** The field every shape is drawn on. */
export function Shape({ children }: { children: ReactNode }) {
  return (
    <svg className="shape" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** The shape at the head of a notice. */
export function NoticeShape({ tone }: { tone: NoticeTone }) {
  return <Shape>{NOTICE_SHAPES[tone]}</Shape>;
}
