import type { ReactNode } from 'react';

export interface EmptyStateProps {
  /** What is not here, such as `No number block yet`. */
  title: string;
  /** What to do first, and why. */
  children?: ReactNode;
  action?: ReactNode;
}

/** Shown where a list or screen has nothing yet: what to do first, with its button. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <div className="empty">
      <svg
        className="empty-shape"
        viewBox="0 0 64 40"
        width="64"
        height="40"
        aria-hidden="true"
        focusable="false"
      >
        <path d="M32 8v28M32 8C26 4 16 3 4 5v28c12-2 22-1 28 3 6-4 16-5 28-3V5C48 3 38 4 32 8z" />
        <path d="M10 12c6-.6 11-.3 16 1.4M10 18.5c6-.6 11-.3 16 1.4" className="empty-lines" />
      </svg>
      <p className="empty-title">{title}</p>
      {children ? <div className="empty-text">{children}</div> : null}
      {action ? <div className="empty-action">{action}</div> : null}
    </div>
  );
}
