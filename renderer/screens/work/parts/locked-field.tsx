import type { ReactNode } from 'react';
import { Sign } from '../../../ui/index.ts';

export interface LockedFieldProps {
  label: string;
  value: ReactNode;
  /** Why it may no longer change; left out where it stands above a group. */
  reason?: string | undefined;
}

/** A field that may no longer change, among inputs: padlock, value and the reason in words. */
export function LockedField({ label, value, reason }: LockedFieldProps) {
  return (
    <dl className="field locked">
      <dt className="field-label">
        {label}
        <span className="visually-hidden"> (locked)</span>
      </dt>
      <dd className="locked-value">
        <Sign name="padlock" />
        <span className="prose">{value || '—'}</span>
      </dd>
      {reason ? <dd className="field-help">{reason}</dd> : null}
    </dl>
  );
}
