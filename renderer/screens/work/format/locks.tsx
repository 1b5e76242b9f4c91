import type { ReactNode } from 'react';
import type { Format, FormatFields } from '../../../../src/contract/formats.ts';
import { formatDay } from '../../../lib/dates.ts';
import { LockedField } from '../parts/locked-field.tsx';
import { FIELD_NAMES } from '../parts/names.ts';

const DATES: readonly string[] = ['publicationDate', 'onSaleDate'];

/** Why a field of a format may no longer change; undefined while it may. */
export function lockReason(format: Format | undefined, field: keyof FormatFields): string | undefined {
  const lock = format?.lock;
  if (!lock?.fields.includes(field)) return undefined;
  if (DATES.includes(field)) return 'This day has been reached or promised; it is history now.';
  return `Locked since ${formatDay(lock.since)}, sent to ${lock.channelName}.`;
}

/** The input of a field, or its value with the reason where it is locked. */
export function UnlessLocked({
  format,
  field,
  value,
  children,
}: {
  format: Format | undefined;
  field: keyof FormatFields;
  value: ReactNode;
  children: ReactNode;
}) {
  const reason = lockReason(format, field);
  if (reason === undefined) return children;
  return <LockedField label={FIELD_NAMES[field]} value={value} reason={reason} />;
}
