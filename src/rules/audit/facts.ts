import type { FileStanding } from '../../contract/format-files.ts';
import type { Settings } from '../../contract/settings.ts';
import type {
  CHANNEL_KINDS,
  FormatStanding,
  ListingStanding,
  NumberStanding,
  PROOF_KINDS,
} from '../../contract/terms.ts';
import type { KeptCard } from '../print-cost/card.ts';

// The plain facts the rules look at. First the rows as the catalogue file holds them, then the same rows
// joined to each other, so that a rule follows a name instead of searching.

export interface BlockRow {
  id: number;
  digits: string;
  hyphenatedPrefix: string;
  label: string;
  boughtOn: string | null;
}

interface WorkRow {
  id: number;
  title: string;
}

export interface EditionRow {
  id: number;
  workId: number;
  number: number | null;
  statement: string;
  title: string;
  language: string;
  imprint: string;
  series: string;
  seriesNumber: string;
  /** Characters of the description, without blanks at its ends. */
  descriptionLength: number;
  /** How many subjects and keywords are recorded. */
  subjects: number;
  keywords: number;
  audience: string;
  ageFrom: number | null;
  ageTo: number | null;
  replacesId: number | null;
}

interface ContributorRow {
  editionId: number;
  role: string;
  name: string;
}

export interface FormatRow {
  id: number;
  editionId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  trimWidthUm: number | null;
  trimHeightUm: number | null;
  pages: number | null;
  durationMinutes: number | null;
  interiorColour: string | null;
  largePrint: boolean;
  publicationDate: string | null;
  onSaleDate: string | null;
  plannedOn: string;
  cancelledOn: string | null;
  standing: FormatStanding;
}

export interface PriceRow {
  formatId: number;
  currency: string;
  amountMinor: number;
}

export interface NumberRow {
  isbn13: string;
  blockId: number | null;
  formatId: number | null;
  reservedFor: string;
  reservedOn: string | null;
  assignedOn: string | null;
  spentOn: string | null;
  standing: Exclude<NumberStanding, 'free'>;
}

interface ChannelRow {
  id: number;
  name: string;
  kind: (typeof CHANNEL_KINDS)[number];
  proof: (typeof PROOF_KINDS)[number];
  leadDays: number;
  removalDays: number;
  subjectLimit: number | null;
  keywordLimit: number | null;
  descriptionLimit: number | null;
  closedOn: string | null;
}

export interface ListingRow {
  id: number;
  formatId: number;
  channelId: number;
  standing: ListingStanding;
  discountBp: number | null;
  printCostMinor: number | null;
  printCostCurrency: string | null;
  onSaleDate: string | null;
  reference: string;
  firstSentOn: string | null;
  firstClearedOn: string | null;
  lastStepOn: string | null;
}

interface StepRow {
  listingId: number;
  toStanding: ListingStanding;
  onDate: string;
}

/** A listing whose record differs from what was last sent, and in what. */
interface DifferenceRow {
  listingId: number;
  sentOn: string;
  labels: readonly string[];
}

export interface PlanRow {
  id: number;
  editionId: number;
  kind: 'release' | 'retirement';
  day: string;
  madeOn: string;
}

export interface TaskRow {
  id: number;
  planId: number | null;
  workId: number | null;
  editionId: number | null;
  formatId: number | null;
  listingId: number | null;
  title: string;
  dueOn: string;
  waitingFor: string;
}

/** What the catalogue file holds, one array a table. Editions, steps and contributors stand in their own order. */
export interface FactRows {
  blocks: readonly BlockRow[];
  works: readonly WorkRow[];
  editions: readonly EditionRow[];
  contributors: readonly ContributorRow[];
  formats: readonly FormatRow[];
  prices: readonly PriceRow[];
  numbers: readonly NumberRow[];
  channels: readonly ChannelRow[];
  printCards: readonly KeptCard[];
  listings: readonly ListingRow[];
  steps: readonly StepRow[];
  differences: readonly DifferenceRow[];
  files: readonly FileStanding[];
  /** Plans that are in force. */
  plans: readonly PlanRow[];
  /** Tasks that had not ended on the day. */
  tasks: readonly TaskRow[];
}

export type AuditSettings = Pick<
  Settings,
  'imprint' | 'currency' | 'removalOverdueDays' | 'workingDays' | 'holidays'
>;

export interface WorkFacts extends WorkRow {
  /** What works are ordered by: the title, case aside. */
  place: string;
  /** In the order they follow each other. */
  editions: EditionFacts[];
}

export interface EditionFacts extends EditionRow {
  /** 'The Salt Almanac, 2nd edition' */
  label: string;
  work: WorkFacts;
  contributors: ContributorRow[];
  formats: FormatFacts[];
  replaces: EditionFacts | null;
  release: PlanRow | null;
  retirement: PlanRow | null;
  /** Place among the editions of its work, the earliest first. */
  place: number;
}

export interface FormatFacts extends FormatRow {
  edition: EditionFacts;
  /** 'The Salt Almanac, 2nd edition · Hardcover (jacket)' */
  label: string;
  /** 'Hardcover (jacket)' */
  name: string;
  /** Every number ever given to it, spent ones included. */
  numbers: NumberFacts[];
  /** The number it carries: the first that is not spent. */
  number: NumberFacts | null;
  prices: PriceRow[];
  files: FileStanding[];
  listings: ListingFacts[];
}

export interface NumberFacts extends NumberRow {
  /** With hyphens where the range table allows them. */
  written: string;
  format: FormatFacts | null;
  /** The block its digits fall in, whatever it is recorded under. */
  block: BlockRow | null;
}

export interface ListingFacts extends ListingRow {
  format: FormatFacts;
  channel: ChannelRow;
  steps: StepRow[];
  differs: DifferenceRow | null;
  /** 'The Salt Almanac, 2nd edition · Paperback on Printworks Direct' */
  label: string;
}

export interface TaskFacts extends TaskRow {
  work: WorkFacts | null;
  edition: EditionFacts | null;
  format: FormatFacts | null;
  listing: ListingFacts | null;
}

/** The catalogue on one day, joined. Formats and listings come in the order of their works and editions. */
export interface Facts {
  /** The day the audit speaks of, YYYY-MM-DD. */
  day: string;
  /** Whether that day is past: what was only planned then is not known now. */
  past: boolean;
  settings: AuditSettings;
  blocks: readonly BlockRow[];
  channels: readonly ChannelRow[];
  printCards: readonly KeptCard[];
  works: WorkFacts[];
  editions: EditionFacts[];
  formats: FormatFacts[];
  listings: ListingFacts[];
  numbers: NumberFacts[];
  tasks: TaskFacts[];
}
