interface RecordName {
  one: string;
  many: string;
}

/** Kinds of record by the table that holds them, the ones that say most about a change first. */
const RECORDS: Record<string, RecordName> = {
  work: { one: 'Work', many: 'Works' },
  edition: { one: 'Edition', many: 'Editions' },
  format: { one: 'Format', many: 'Formats' },
  listing: { one: 'Listing', many: 'Listings' },
  number_block: { one: 'Block of numbers', many: 'Blocks of numbers' },
  number: { one: 'Number', many: 'Numbers' },
  channel: { one: 'Channel', many: 'Channels' },
  plan: { one: 'Plan', many: 'Plans' },
  task: { one: 'Task', many: 'Tasks' },
  correction: { one: 'Correction', many: 'Corrections' },
  text_template: { one: 'Text', many: 'Texts' },
  acceptance: { one: 'Accepted finding', many: 'Accepted findings' },
  saved_filter: { one: 'Saved filter', many: 'Saved filters' },
  plan_template: { one: 'Steps of a plan', many: 'Steps of plans' },
  setting: { one: 'Setting', many: 'Settings' },
  format_file: { one: 'File', many: 'Files' },
  proof_check: { one: 'Check of a file', many: 'Checks of files' },
  proof_check_reason: { one: 'Reason for a difference', many: 'Reasons for differences' },
  proof_check_line: { one: 'Line of a check', many: 'Lines of checks' },
  edition_advice: { one: 'Answer on new edition or reprint', many: 'Answers on new edition or reprint' },
  edition_advice_line: { one: 'Line of an answer', many: 'Lines of answers' },
  format_price: { one: 'Price', many: 'Prices' },
  edition_contributor: { one: 'Contributor', many: 'Contributors' },
  edition_subject: { one: 'Subject', many: 'Subjects' },
  edition_keyword: { one: 'Keyword', many: 'Keywords' },
  onix_part: { one: 'Part of an ONIX record', many: 'Parts of ONIX records' },
  listing_step: { one: 'Step of a listing', many: 'Steps of listings' },
  proof_round: { one: 'Proof round', many: 'Proof rounds' },
  cost: { one: 'Cost', many: 'Costs' },
  print_card: { one: 'Print-cost card', many: 'Print-cost cards' },
  print_quote: { one: 'Quote for printing', many: 'Quotes for printing' },
  removal_event: { one: 'Answer of a channel', many: 'Answers of channels' },
  returns_window: { one: 'Last date for returns', many: 'Last dates for returns' },
  stock_count: { one: 'Count of copies', many: 'Counts of copies' },
  agency_record: { one: 'Record at the agency', many: 'Records at the agency' },
  submission: { one: 'Sheet that was sent', many: 'Sheets that were sent' },
  channel_report: { one: 'Report of a channel', many: 'Reports of channels' },
  report_finding: { one: 'Difference in a report', many: 'Differences in reports' },
  sheet_column: { one: 'Column of a table', many: 'Columns of tables' },
  report_column: { one: 'Column of a report', many: 'Columns of reports' },
  merged_row: { one: 'Row from a copy', many: 'Rows from a copy' },
  task_need: { one: 'Order of two tasks', many: 'Order of tasks' },
};

/** 'Price' for `format_price`. */
export function recordName(entity: string): string {
  return RECORDS[entity]?.one ?? entity;
}

/** How much a kind of record says about a change, the most first; unknown kinds come last. */
export function rankOf(entity: string): number {
  const rank = Object.keys(RECORDS).indexOf(entity);
  return rank < 0 ? Number.MAX_SAFE_INTEGER : rank;
}

/** The kinds of record to filter by, in the order of their names. */
export const RECORD_CHOICES = Object.entries(RECORDS)
  .map(([value, { many }]) => ({ value, label: many }))
  .sort((a, b) => a.label.localeCompare(b.label));
