import { type Audit, type AuditRow, type Finding, SEVERITIES } from '../contract/audit.ts';
import type { FormatStanding } from '../contract/terms.ts';
import { hyphenate } from '../rules/isbn/index.ts';
import { type CsvCell, csvText } from './csv.ts';
import { wrap } from './wrap.ts';

const WIDTH = 100;
const DEMO = 'Demo catalogue: its numbers are invented and must never be printed.';
const CAUTION =
  "This audit advises; it does not decide. Where it differs from the manual of your ISBN agency or from a channel's own terms, those prevail. It reads what was recorded here and cannot see what a channel shows.";

/** What is on sale first, then what leaves it, then what is under way, then what has ended. */
const GROUPS: readonly [FormatStanding, string][] = [
  ['live', 'Live'],
  ['retiring', 'Retiring'],
  ['proofing', 'Proofing'],
  ['committed', 'Committed'],
  ['planned', 'Planned'],
  ['retired', 'Retired'],
  ['cancelled', 'Cancelled'],
];

function counted(count: number, one: string, many: string): string {
  return `${count.toLocaleString('en')} ${count === 1 ? one : many}`;
}

function underlined(title: string, stroke: string): string[] {
  const lines = wrap(title, WIDTH);
  return [...lines, stroke.repeat(Math.max(...lines.map((line) => [...line].length)))];
}

function fact(name: string, value: string): string[] {
  return wrap(value, WIDTH, name.padEnd(16));
}

function heading(audit: Audit): string[] {
  const severities = SEVERITIES.map((severity) => {
    const count = audit.findings.filter((finding) => finding.severity === severity).length;
    return severity === 'note'
      ? counted(count, 'note', 'notes')
      : `${count.toLocaleString('en')} ${severity}`;
  });
  const { free, reserved, assigned, spent } = audit.numbers;
  const stand = [`${free.toLocaleString('en')} free`, `${reserved.toLocaleString('en')} reserved`];
  stand.push(`${assigned.toLocaleString('en')} assigned`, `${spent.toLocaleString('en')} spent`);
  const past = audit.asOf === audit.today ? '' : ', a past day, as the file knows it now';
  return [
    ...underlined(`Audit of ${audit.catalogueName}`, '='),
    '',
    ...(audit.demo ? [DEMO, ''] : []),
    ...fact('File', audit.fileName),
    ...fact('Made on', audit.today),
    ...fact('Speaks of', `${audit.asOf}${past}`),
    ...fact('Rules applied', String(audit.rules)),
    ...fact('Findings', severities.join(', ')),
    ...fact('Numbers', stand.join(', ')),
    ...fact('Journal head', audit.journalHead),
  ];
}

function formatLines(format: AuditRow): string[] {
  return [
    ...wrap(`${format.editionLabel} · ${format.name}`, WIDTH, '  '),
    ...wrap(format.hyphenated ? `ISBN ${format.hyphenated}` : 'no number yet', WIDTH, '    '),
    ...format.channels.flatMap((line) => wrap(line, WIDTH, '    ')),
  ];
}

function formatGroups(audit: Audit): string[] {
  const groups = Map.groupBy(audit.formats, (format) => format.standing);
  return GROUPS.flatMap(([standing, name]) => {
    const formats = groups.get(standing) ?? [];
    if (formats.length === 0) return [];
    const title = `${name} (${counted(formats.length, 'format', 'formats')})`;
    return ['', ...underlined(title, '-'), ...formats.flatMap((format) => ['', ...formatLines(format)])];
  });
}

/** The findings of one rule together: what was found, then once how to mend it and where the rule comes from. */
function ruleLines([first, ...more]: readonly Finding[]): string[] {
  if (!first) return [];
  return [
    '',
    ...[first, ...more].flatMap((finding) => wrap(finding.message, WIDTH, '  * ')),
    ...wrap(`How to mend: ${first.mend}`, WIDTH, '    '),
    ...wrap(`Rule: ${first.rule} (${first.source})`, WIDTH, '    '),
  ];
}

function findingGroups(audit: Audit): string[] {
  if (audit.findings.length === 0) return ['', ...underlined('Findings', '-'), '', 'No rule found anything.'];
  return SEVERITIES.flatMap((severity) => {
    const found = audit.findings.filter((finding) => finding.severity === severity);
    if (found.length === 0) return [];
    const title = severity === 'note' ? 'Notes' : severity === 'must fix' ? 'Must fix' : 'Should fix';
    const byRule = Map.groupBy(found, (finding) => finding.rule);
    return ['', ...underlined(`${title} (${found.length})`, '-'), ...[...byRule.values()].flatMap(ruleLines)];
  });
}

/** The audit as plain text: lines of at most 100 characters, ended by LF. */
export function auditPlainText(audit: Audit): string {
  const formats = audit.formats.length === 0 ? ['', 'No format is recorded yet.'] : formatGroups(audit);
  const lines = [...heading(audit), ...formats, ...findingGroups(audit), '', ...wrap(CAUTION, WIDTH)];
  return `${lines.join('\n')}\n`;
}

/** Columns of the CSV, in order. */
const COLUMNS = [
  'record',
  'as_of',
  'edition',
  'format',
  'isbn',
  'standing',
  'channels',
  'severity',
  'rule',
  'message',
  'mend',
  'source',
  'work_id',
  'edition_id',
  'format_id',
  'listing_id',
] as const;

type Cells = Partial<Record<(typeof COLUMNS)[number], CsvCell>>;

/** Never bare digits, which a spreadsheet rounds: hyphens everywhere, at least after the first three digits. */
function isbnCell(isbn13: string): string {
  return hyphenate(isbn13) ?? `${isbn13.slice(0, 3)}-${isbn13.slice(3)}`;
}

/**
 * The audit as one CSV table (RFC 4180, safe to open in a spreadsheet). `record` is 'format' or 'finding'.
 * Both have `as_of` (the day spoken of), `edition`, `format`, `isbn` (hyphenated, so that it stays text) and
 * the ids; a format has `standing` and `channels` (joined by '; '), a finding `severity`, `rule`, `message`,
 * `mend`, `source`, and the standing of its format. What does not apply is empty. In a demo catalogue the
 * first record is 'demo', whose `message` says that its numbers are invented.
 */
export function auditCsv(audit: Audit): string {
  const formats = new Map(audit.formats.map((format) => [format.formatId, format]));
  const rows: Cells[] = audit.demo ? [{ record: 'demo', message: DEMO }] : [];
  for (const format of audit.formats)
    rows.push({
      record: 'format',
      edition: format.editionLabel,
      format: format.name,
      isbn: format.hyphenated && isbnCell(format.hyphenated.replaceAll('-', '')),
      standing: format.standing,
      channels: format.channels.join('; '),
      work_id: format.workId,
      format_id: format.formatId,
    });
  for (const finding of audit.findings) {
    const format = finding.formatId === null ? undefined : formats.get(finding.formatId);
    rows.push({
      record: 'finding',
      edition: format?.editionLabel ?? null,
      format: format?.name ?? null,
      isbn: finding.isbn13 && isbnCell(finding.isbn13),
      standing: format?.standing ?? null,
      severity: finding.severity,
      rule: finding.rule,
      message: finding.message,
      mend: finding.mend,
      source: finding.source,
      work_id: finding.workId,
      edition_id: finding.editionId,
      format_id: finding.formatId,
      listing_id: finding.listingId,
    });
  }
  return csvText(
    COLUMNS,
    rows.map((row) => COLUMNS.map((column) => (column === 'as_of' ? audit.asOf : (row[column] ?? null)))),
  );
}

/** 'halyard-and-fen-audit-2026-11-25.csv' from the catalogue file's name and the day spoken of. */
export function auditFileName(
  audit: Pick<Audit, 'fileName' | 'asOf'>,
  as: 'text' | 'csv' | 'html' | 'pdf',
): string {
  const base = audit.fileName
    .replace(/\.ledger$/i, '')
    .replace(/[^\p{L}\p{N}_-]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return `${base || 'catalogue'}-audit-${audit.asOf}.${as === 'text' ? 'txt' : as}`;
}
