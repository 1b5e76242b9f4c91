import { planSteps } from '../../../src/contract/plan-templates.ts';
import { sentSheet } from '../../../src/contract/submissions.ts';
import { FORM_DETAILS, PRODUCT_FORMS, roleName } from '../../../src/contract/terms.ts';
import { formatDay, isDay } from '../../lib/dates.ts';
import { formatLength } from '../../lib/length.ts';
import { formatMoney, formatParts } from '../../lib/money.ts';
import { fieldName, languageName, percent, returnsName } from '../work/parts/names.ts';

export type Row = Record<string, string | number | null>;

/** Amounts of money and the column of their currency; the pair is shown as one field. */
export const CURRENCY_OF: Record<string, string> = {
  amount_minor: 'currency',
  cost_minor: 'cost_currency',
  print_cost_minor: 'print_cost_currency',
};

const YES_NO = new Set([
  'inside_cover_print',
  'large_print',
  'right_to_left',
  'printed_proof',
  'on_sale_fixed',
  'complete',
]);

function named(list: readonly { code: string; name: string }[], code: string): string {
  return list.find((entry) => entry.code === code)?.name ?? code;
}

/** A text that holds JSON, such as a setting, for reading. */
function fromJson(text: string, each: (word: string) => string): string {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return text;
  }
  const plain = (one: unknown): string =>
    one !== null && typeof one === 'object' ? Object.values(one).flat().map(plain).join(' ') : String(one);
  if (Array.isArray(value)) return value.map((one) => each(plain(one))).join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value !== null && typeof value === 'object') return plain(value);
  return String(value);
}

/** The values of a sheet that was sent, one after the other. */
function fromSheet(text: string): string {
  const parsed = sentSheet.safeParse(JSON.parse(text));
  if (!parsed.success) return text;
  const filled = parsed.data.items.filter((item) => item.value !== '');
  return filled.map(({ label, value }) => `${label}: ${value}`).join('; ');
}

const VERDICTS: Record<string, string> = {
  new: 'a new number',
  judge: 'one’s own call',
  same: 'keep the number',
  mixed: 'differs by format',
};

/** The titles of the steps of a plan that are switched on. */
function stepTitles(text: string): string {
  const steps = planSteps.safeParse(JSON.parse(text)).data ?? [];
  return steps
    .filter(({ on }) => on)
    .map(({ title }) => title)
    .join('; ');
}

/** 'pages 1, 2, 4' */
function picturedPages(text: string): string {
  const pages = (JSON.parse(text) as { page?: unknown }[]).map(({ page }) => String(page));
  return pages.length === 0 ? 'none' : `pages ${pages.join(', ')}`;
}

/** A place on a page in points, rounded. */
function placeOnPage(text: string): string {
  const { xPt, yPt, widthPt, heightPt } = JSON.parse(text) as Record<string, number | undefined>;
  const [x, y, width, height] = [xPt, yPt, widthPt, heightPt].map((pt) => Math.round(pt ?? 0));
  return `${width} × ${height} pt at ${x}, ${y}`;
}

const READERS: Record<string, (text: string) => string> = {
  form: (code) => named(PRODUCT_FORMS, code),
  form_detail: (code) => named(FORM_DETAILS, code),
  role: roleName,
  language: languageName,
  returns: returnsName,
  default_returns: returnsName,
  sheet: fromSheet,
  sheet_items: (text) => fromJson(text, fieldName),
  locks_more: (text) => fromJson(text, fieldName),
  verdict: (text) => VERDICTS[text] ?? text,
  told: (text) => (text === 'record' ? 'the records' : 'the publisher'),
  value: (text) => fromJson(text, (word) => word),
  steps: stepTitles,
  pictures: picturedPages,
  box: placeOnPage,
};

function readNumber(column: string, value: number, row: Row): string {
  const currency = CURRENCY_OF[column];
  if (currency !== undefined) return formatMoney(value, String(row[currency] ?? ''));
  if (column.endsWith('_parts')) return formatParts(value, String(row.currency ?? ''));
  if (column.endsWith('_um')) return formatLength(value, 'mm');
  if (column.endsWith('_bp')) return percent(value);
  if (YES_NO.has(column)) return value === 1 ? 'yes' : 'no';
  if (column === 'duration_minutes') return `${value.toLocaleString()} minutes`;
  if (column === 'template_id') return `steps ${value} of this file`;
  if (column === 'replaces_id') return `edition ${value} of this file`;
  return value.toLocaleString();
}

/** A value as a person reads it; empty for what is not set. */
export function readValue(column: string, row: Row | null): string {
  const value = row?.[column] ?? '';
  if (row === null || value === '') return '';
  if (typeof value === 'number') return readNumber(column, value, row);
  const reader = READERS[column];
  if (reader) return reader(value);
  return isDay(value) ? formatDay(value) : value;
}
