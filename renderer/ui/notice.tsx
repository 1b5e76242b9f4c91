import type { ReactNode } from 'react';
import type { CallRefused } from '../transport.ts';
import { NoticeShape, type NoticeTone } from './standing-shapes.tsx';

export interface NoticeProps {
  tone?: NoticeTone | undefined;
  /** A word or short sentence set before the text. */
  title?: string | undefined;
  children?: ReactNode;
  action?: ReactNode;
  /** Read out as soon as it appears. */
  live?: boolean | undefined;
}

/** A framed remark in the flow of a screen: `note`, `care`, `stop` or `done`. */
export function Notice({ tone = 'note', title, children, action, live }: NoticeProps) {
  return (
    <div className={`notice notice-${tone}`} role={live ? 'alert' : undefined}>
      <NoticeShape tone={tone} />
      <div className="notice-text">
        {title ? <strong>{title}</strong> : null}
        {children ? <div>{children}</div> : null}
      </div>
      {action ? <div className="notice-action">{action}</div> : null}
    </div>
  );
}

/** The refusal of a command or query that no input field of the view shows. `fields` are those that do. */
export function Refused({
  refusal,
  fields = [],
}: {
  refusal: CallRefused | null | undefined;
  fields?: readonly string[];
}) {
  if (!refusal || (refusal.field !== undefined && fields.includes(refusal.field))) return null;
  return (
    <Notice tone="stop" title="Not done." live>
      {refusal.message}
    </Notice>
  );
}
