import type { Settings } from '../../../src/contract/settings.ts';
import { fieldName } from '../work/parts/names.ts';

/** Names of columns that differ from the contract's own names of fields, or that only the journal shows. */
const NAMES: Record<string, string> = {
  position: 'Place in the list',
  keyword: 'Keyword',
  scheme: 'Subject scheme',
  code: 'Subject code',
  heading: 'Subject heading',
  role: 'Role',
  name: 'Name',
  amount_minor: 'Amount',
  tax: 'Tax in the price',
  replaces_id: 'Replaces',
  planned_on: 'Planned on',
  cancelled_on: 'Cancelled on',
  cancel_reason: 'Why cancelled',
  standing: 'Standing',
  discount_bp: 'Discount',
  returns: 'Returns',
  print_cost_minor: 'Print cost',
  reference: 'Reference',
  first_sent_on: 'First sent on',
  first_cleared_on: 'First cleared on',
  last_step_on: 'Last step on',
  from_standing: 'From',
  to_standing: 'To',
  on_date: 'On',
  reserved_for: 'Reserved for',
  reserved_on: 'Reserved on',
  assigned_on: 'Assigned on',
  spent_on: 'Spent on',
  spent_reason: 'Why spent',
  hyphenated_prefix: 'Prefix',
  agency: 'Agency',
  label: 'Label',
  bought_on: 'Bought on',
  cost_minor: 'Cost',
  kind: 'Kind',
  contact: 'Contact',
  lead_days: 'Working days to on sale',
  removal_days: 'Days for a removal',
  proof: 'Proof',
  subject_limit: 'Most subjects',
  keyword_limit: 'Most keywords',
  keyword_separator: 'Sign between keywords',
  description_limit: 'Longest description',
  title_limit: 'Longest title',
  subtitle_limit: 'Longest subtitle',
  description_markup: 'Markup in the description',
  sheet_items: 'What its form asks for',
  outcome: 'Outcome',
  voucher: 'Voucher',
  promised_by: 'Promised by',
  until: 'Until',
  place: 'Where',
  copies: 'Copies',
  counted_on: 'Counted on',
  fate: 'What becomes of them',
  out_of_print_on: 'Out of print on',
  taken_on: 'As recorded on',
  sheet: 'What was sent',
  default_discount_bp: 'Usual discount',
  default_returns: 'Usual returns',
  request_template: 'Request text',
  locks_more: 'Also locked at submission',
  closed_on: 'Closed on',
  day: 'Day',
  made_on: 'Made on',
  ended_on: 'Ended on',
  dropped_on: 'Dropped on',
  dropped_reason: 'Why dropped',
  due_on: 'Due on',
  waiting_for: 'Waiting for',
  reason: 'Reason',
  message: 'Finding',
  accepted_on: 'Accepted on',
  review_on: 'Review on',
  reopened_on: 'Open again since',
  verdict: 'Verdict',
  format_name: 'Format',
  change: 'What changes',
  detail: 'From what to what',
  told: 'Told by',
  rule: 'Rule',
  source: 'Source',
  file_name: 'File name',
  final_on: 'Final on',
  sha256: 'SHA-256',
  ended_how: 'How it ended',
  ended_reason: 'Why it ended',
  value: 'Value',
  version: 'Version',
  subject: 'Subject',
  body: 'Text',
  saved_on: 'Saved on',
  terms: 'What is shown',
};

/** `trim_width_um` → `trimWidthUm`, as the contract writes it. */
function contractName(column: string): string {
  return column.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

/** The plain name of a column: 'Trim width' for `trim_width_um`. */
export function columnName(column: string): string {
  const field = contractName(column);
  const name = NAMES[column] ?? fieldName(field);
  return name === field ? column.replaceAll('_', ' ') : name;
}

/** Plain names of the settings, which are kept by the contract's names. */
const SETTINGS: Record<keyof Settings | 'requestTemplate' | 'demo', string> = {
  catalogueName: 'Name of the catalogue',
  publisher: 'Publisher',
  imprint: 'Imprint',
  language: 'Language',
  currency: 'Currency',
  lengthUnit: 'Unit of lengths',
  removalOverdueDays: 'Days after which a removal is overdue',
  holidays: 'Holidays',
  workingDays: 'Working days',
  requestTemplate: 'Request text',
  countryOfPublication: 'Country of publication',
  salesRights: 'Sales rights',
  papers: 'Papers',
  printerFigures: 'Figures of the printer',
  theme: 'Light or dark',
  backupFolder: 'Folder of backups',
  demo: 'Demo catalogue',
};

/** 'Name of the catalogue' for `catalogueName`. */
export function settingName(key: string): string {
  return Object.hasOwn(SETTINGS, key) ? SETTINGS[key as keyof typeof SETTINGS] : key;
}
