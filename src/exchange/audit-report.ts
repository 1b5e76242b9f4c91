import type { AcceptedFinding, Audit, AuditRow, Finding } from '../contract/audit.ts';
import { hyphenate } from '../rules/isbn/index.ts';
import { type CsvCell, csvText } from './csv.ts';
import {
  CAUTION,
  counted,
  DEMO,
  findingGroups,
  formatGroups,
  reportFacts,
  SEVERITY_NAMES,
} from './report-parts.ts';
import { wrap } from './wrap.ts';

const WIDTH = 100;
function underlined(title: string, stroke: string): string[] {
  const lines = wrap(title, WIDTH);
  return [...lines, stroke.repeat(Math.max(...lines.map((line) => [...line].length)))];
}

function fact(name: string, value: string): string[] {
  return wrap(value, WIDTH, name.padEnd(16));
}

function heading(audit: Audit): string[] {
  const facts = reportFacts(audit).filter(([name]) => name !== 'Catalogue');
  return [
    ...underlined(`Audit of ${audit.catalogueName}`, '='),
    '',
    ...(audit.demo ? [DEMO, ''] : []),
    ...facts.flatMap(([name, value]) => fact(name, value)),
  ];
}

function formatLines(format: AuditRow): string[] {
  return [
    ...wrap(`${format.editionLabel} · ${format.name}`, WIDTH, '  '),
    ...wrap(format.hyphenated ? `ISBN ${format.hyphenated}` : 'no number yet', WIDTH, '    '),
    ...format.channels.flatMap((line) => wrap(line, WIDTH, '    ')),
  ];
}

function formatParts(audit: Audit): string[] {
  return formatGroups(audit).flatMap(({ name, rows }) => {
    const title = `${name} (${counted(rows.length, 'format', 'formats')})`;
    return ['', ...underlined(title, '-'), ...rows.flatMap((format) => ['', ...formatLines(format)])];
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

function findingParts(audit: Audit): string[] {
  if (audit.findings.length === 0) return ['', ...underlined('Findings', '-'), '', 'No rule found anything.'];
  return findingGroups(audit).flatMap(({ severity, count, rules }) => [
    '',
    ...underlined(`${SEVERITY_NAMES[severity]} (${count})`, '-'),
    ...rules.flatMap(ruleLines),
  ]);
}

/** What was found too but accepted for the time being, with why and until when. */
function acceptedParts({ accepted }: Audit): string[] {
  if (accepted.length === 0) return [];
  return [
    '',
    ...underlined(`Accepted (${accepted.length})`, '-'),
    ...accepted.flatMap((finding) => [
      '',
      ...wrap(finding.message, WIDTH, '  * '),
      ...wrap(`Why it may stay: ${finding.accepted.reason}`, WIDTH, '    '),
      ...wrap(
        `Accepted on ${finding.accepted.on}, to be looked at again on ${finding.accepted.reviewOn}.`,
        WIDTH,
        '    ',
      ),
      ...wrap(`Rule: ${finding.rule} (${finding.source})`, WIDTH, '    '),
    ]),
  ];
}

/** The audit as plain text: lines of at most 100 characters, ended by LF. */
export function auditPlainText(audit: Audit): string {
  const formats = audit.formats.length === 0 ? ['', 'No format is recorded yet.'] : formatParts(audit);
  const found = [...findingParts(audit), ...acceptedParts(audit)];
  const lines = [...heading(audit), ...formats, ...found, '', ...wrap(CAUTION, WIDTH)];
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
  'accepted_reason',
  'accepted_on',
  'review_on',
  'rule_set',
] as const;

type Cells = Partial<Record<(typeof COLUMNS)[number], CsvCell>>;

/** Never bare digits, which a spreadsheet rounds: hyphens everywhere, at least after the first three digits. */
function isbnCell(isbn13: string): string {
  return hyphenate(isbn13) ?? `${isbn13.slice(0, 3)}-${isbn13.slice(3)}`;
}

/** A finding, or one that was accepted, with the format it is about. */
function findingCells(finding: Finding | AcceptedFinding, format: AuditRow | undefined): Cells {
  const accepted = 'accepted' in finding ? finding.accepted : undefined;
  return {
    record: accepted ? 'accepted' : 'finding',
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
    accepted_reason: accepted?.reason ?? null,
    accepted_on: accepted?.on ?? null,
    review_on: accepted?.reviewOn ?? null,
  };
}

/**
 * The audit as one CSV table (RFC 4180, safe to open in a spreadsheet). `record` is 'report' (the first one, whose
 * `message` says by what the report is known: file, day, rules, journal head), 'demo' (whose `message` says that the
 * numbers are invented), 'format', 'finding', or 'accepted' for a finding that was accepted. All have `as_of` (the day
 * spoken of) and `rule_set`; formats and findings have `edition`, `format`, `isbn` (hyphenated, so that it stays text)
 * and the ids; a format has `standing` and `channels` (joined by '; '), a finding `severity`, `rule`, `message`, `mend`,
 * `source`, and the standing of its format, an accepted one also why, since when and until when. What does not apply is
 * empty.
 */
export function auditCsv(audit: Audit): string {
  const formats = new Map(audit.formats.map((format) => [format.formatId, format]));
  const facts = reportFacts(audit).map(([name, value]) => `${name}: ${value}`);
  const rows: Cells[] = [{ record: 'report', message: facts.join('; ') }];
  if (audit.demo) rows.push({ record: 'demo', message: DEMO });
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
  for (const finding of [...audit.findings, ...audit.accepted])
    rows.push(findingCells(finding, formats.get(finding.formatId ?? 0)));
  const everywhere: Cells = { as_of: audit.asOf, rule_set: audit.ruleSet };
  return csvText(
    COLUMNS,
    rows.map((row) => COLUMNS.map((column) => everywhere[column] ?? row[column] ?? null)),
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
