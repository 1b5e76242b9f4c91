import { type ReactNode, useEffect, useRef } from 'react';
import { useLocation } from 'wouter';
import { noteRecent } from '../recent.ts';
import { Breadcrumb, type Crumb } from './breadcrumb.tsx';

export interface PageHeaderProps {
  /** The screen's heading, also the window's title. */
  title: string;
  /** Set in italics, as titles of works are. */
  italic?: boolean | undefined;
  crumbs?: readonly Crumb[] | undefined;
  /** A line under the heading: subtitle, counts, standing. */
  lede?: ReactNode;
  actions?: ReactNode;
}

/** Tabs of a record are deeper routes of the same view, so they leave the focus where it is. */
function viewOf(path: string): string {
  return path.split('/').slice(0, 3).join('/');
}

let shownView: string | undefined;

/** The head of every screen: sets the window's title and takes the focus after a move to another view. */
export function PageHeader({ title, italic, crumbs, lede, actions }: PageHeaderProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [path] = useLocation();
  const view = viewOf(path);
  useEffect(() => {
    document.title = `${title} — Edition Ledger`;
    if (italic) noteRecent({ to: view, label: title, kind: 'Work' });
  }, [title, italic, view]);
  useEffect(() => {
    if (shownView !== undefined && shownView !== view) heading.current?.focus();
    shownView = view;
  }, [view]);
  return (
    <header className="page-header">
      {crumbs ? <Breadcrumb crumbs={crumbs} /> : null}
      <div className="page-header-row">
        <h1 ref={heading} tabIndex={-1} className={italic ? 'italic' : undefined}>
          {title}
        </h1>
        {actions ? <div className="page-header-actions">{actions}</div> : null}
      </div>
      {lede ? <div className="page-header-lede">{lede}</div> : null}
    </header>
  );
}
