import type { ReactNode } from 'react';
import { formatDay } from '../lib/dates.ts';
import { Sign } from './shapes.tsx';

export interface LockedProps {
  label: string;
  value: ReactNode;
  /** `YYYY-MM-DD` of the submission that locked the field. */
  since: string;
  /** The listing or channel through which it locked. */
  by: string;
  /** What to do instead, such as a link to make a new edition. */
  instead?: ReactNode;
}

/** An identity field that may no longer change: padlock, value and the reason in words. */
export function Locked({ label, value, since, by, instead }: LockedProps) {
  return (
    <dl className="field locked">
      <dt className="field-label">{label}</dt>
      <dd className="locked-value">
        <Sign name="padlock" />
        <span>{value}</span>
      </dd>
      <dd className="field-help">
        Locked since <time dateTime={since}>{formatDay(since)}</time> by {by}.
        {instead ? <> {instead}</> : null}
      </dd>
    </dl>
  );
}
