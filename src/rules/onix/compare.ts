import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import { changesOf } from '../changes.ts';
import type { ReadProduct } from './products.ts';

type Told = Pick<ReadProduct, 'edition' | 'format'>;

/** What of an edition a product would change. A description that says the same with other marks is no change. */
export function editionChanges(
  now: EditionFields,
  told: Told['edition'],
  plain: (text: string) => string,
): Partial<EditionFields> {
  const changes = changesOf<EditionFields>(now, told);
  if (changes.description !== undefined && plain(now.description) === plain(changes.description))
    delete changes.description;
  return changes;
}

/**
 * What of a format a product would change. A message does not tell every field, and a size or a price that it leaves out
 * is not taken away.
 */
export function formatChanges(now: FormatFields, told: Told['format']): Partial<FormatFields> {
  const changes = changesOf<FormatFields>(now, told);
  for (const field of [
    'trimWidthUm',
    'trimHeightUm',
    'pages',
    'durationMinutes',
    'publicationDate',
    'onSaleDate',
    'formDetail',
    'caseKind',
  ] as const)
    if (changes[field] === null) delete changes[field];
  if (changes.prices?.length === 0) delete changes.prices;
  return changes;
}

/** A value as a preview shows it, cut to a readable length. */
export function shownValue(value: unknown): string {
  const text = ((): string => {
    if (value === null || value === undefined) return '';
    if (Array.isArray(value)) return value.map(shownItem).join('; ');
    if (typeof value === 'boolean') return value ? 'yes' : 'no';
    return String(value);
  })();
  return text.length > 300 ? `${text.slice(0, 299)}…` : text;
}

function shownItem(item: unknown): string {
  if (typeof item !== 'object' || item === null) return String(item);
  const record = item as Record<string, unknown>;
  if ('role' in record) return `${record.name} (${record.role})`;
  if ('code' in record) return `${record.code}`;
  return Object.values(record).join(' ');
}

/** Fields that all formats of an edition must agree on, in brief: long texts by their beginning and length. */
export function digestOf(edition: Told['edition']): Record<string, string> {
  const digest: Record<string, string> = {};
  for (const [field, value] of Object.entries(edition)) {
    const text = JSON.stringify(value) ?? '';
    digest[field] = text.length > 200 ? `${text.slice(0, 160)}#${text.length}` : text;
  }
  return digest;
}
