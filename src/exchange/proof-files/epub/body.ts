import type { EpubFacts, SeenIsbn } from '../../../contract/proof-checks/facts.ts';
import { isbnsIn } from '../isbns.ts';
import { told, type Watch } from '../watch.ts';
import type { Archive, Entry } from '../zip/archive.ts';
import { inflate, tested } from '../zip/inflate.ts';
import { shownName } from '../zip/names.ts';
import type { Numbered } from './copyright.ts';
import type { Findings } from './faults.ts';
import type { Listed } from './manifest.ts';
import { remoteInStyles } from './styles.ts';
import { type DocumentText, readDocument } from './text.ts';

interface Sources {
  archive: Archive;
  manifest: ReadonlyMap<string, Listed>;
  spine: readonly Listed[];
  locked: ReadonlySet<string>;
  findings: Findings;
  watch: Watch;
}

export interface Body {
  documents: Numbered[];
  isbns: SeenIsbn[];
  scripts: number;
  linesWith(copyrightPage: number | null): EpubFacts['lines'];
}

/** One document of a book is some hundred kilobytes; all its text together some megabytes. */
const MOST_DOCUMENT = 24 * 1024 * 1024;
const MOST_TEXT = 192 * 1024 * 1024;
/** Where title, imprint and copyright page stand: at the head, in some books at the end. */
const FIRST = 8;
const LAST = 4;
const LINES_OF_ONE = 250;
const LINES_OF_COPYRIGHT = 1_000;
const MOST_ISBNS = 1_000;

const DOCUMENT_TYPES = ['application/xhtml+xml', 'image/svg+xml', 'text/html', 'text/x-oeb1-document'];

/** What a document draws from the network and may not: everything but sound and film (EPUB 3.3, remote resources). */
const MAY_BE_REMOTE = ['audio', 'video', 'source', 'track'];

class BodyReader {
  readonly #from: Sources;
  readonly documents: Numbered[] = [];
  readonly isbns: SeenIsbn[] = [];
  scripts = 0;
  #text = 0;
  #done = 0;
  readonly #total: number;
  readonly #read = new Set<Entry>();

  constructor(from: Sources) {
    this.#from = from;
    this.#total = from.archive.entries.reduce((sum, entry) => sum + entry.size, 0);
  }

  #tell(entry: Entry): void {
    this.#read.add(entry);
    this.#done += entry.size;
    told(this.#from.watch, this.#done, this.#total, 'Reading the book');
  }

  /** A document's text, null where it is encrypted, too large, or not text at all. */
  async #document({ entry, item }: Listed): Promise<DocumentText | null> {
    const { archive, findings, locked } = this.#from;
    if (entry === undefined || !DOCUMENT_TYPES.includes(item.mediaType)) return null;
    if (locked.has(entry.name)) {
      findings.skipped(`“${shownName(entry.name)}” is encrypted and was not read.`);
      return null;
    }
    this.#tell(entry);
    this.#text += entry.size;
    if (entry.size > MOST_DOCUMENT || this.#text > MOST_TEXT) {
      await tested(archive, entry);
      findings.skipped(`“${shownName(entry.name)}” is too long to be looked through and was not read.`);
      return null;
    }
    const bytes = await inflate(archive, entry, MOST_DOCUMENT);
    return bytes === null ? null : this.#judged(entry.name, readDocument(bytes));
  }

  #judged(name: string, text: DocumentText): DocumentText {
    const { findings } = this.#from;
    this.scripts += text.scripts;
    if (text.trouble !== null)
      findings.fault(
        `“${shownName(name)}” ${text.trouble.what} (line ${text.trouble.line}); what follows was not read.`,
      );
    for (const { element, href } of text.remote)
      if (!MAY_BE_REMOTE.includes(element))
        findings.fault(
          `“${shownName(name)}” draws “${shownName(href)}” from the internet; the book has to carry it itself.`,
        );
    return text;
  }

  async spine(): Promise<void> {
    const { spine } = this.#from;
    for (const [index, one] of spine.entries()) {
      const text = await this.#document(one);
      const page = index + 1;
      const near = page <= FIRST || page > spine.length - LAST;
      const path = one.entry?.name ?? '';
      const types = text?.types ?? new Set<string>();
      const marked = types.has('copyright-page');
      // Long documents far inside are looked through for numbers, and not kept.
      const keep = near || marked || (text?.lines.length ?? 0) <= 60;
      this.documents.push({ page, path, types, lines: keep ? (text?.lines ?? []) : [] });
      for (const line of text?.lines ?? []) this.#sought(line, page);
    }
  }

  #sought(line: string, page: number): void {
    if (this.isbns.length >= MOST_ISBNS || !/[0-9]{2}|isbn/i.test(line)) return;
    for (const { raw, isbn13 } of isbnsIn(line))
      if (this.isbns.length < MOST_ISBNS) this.isbns.push({ page, raw, isbn13, box: null });
  }

  /** Everything else: documents outside the reading order, styles, and the soundness of the rest. */
  async rest(): Promise<void> {
    const { archive, manifest, findings, locked } = this.#from;
    const types = new Map([...manifest.values()].map((one) => [one.entry, one]));
    for (const entry of archive.entries) {
      if (this.#read.has(entry)) continue;
      const one = types.get(entry);
      if (one !== undefined && DOCUMENT_TYPES.includes(one.item.mediaType)) await this.#document(one);
      if (this.#read.has(entry)) continue;
      this.#tell(entry);
      if (one?.item.mediaType === 'text/css' && !locked.has(entry.name)) {
        const bytes = await inflate(archive, entry, MOST_DOCUMENT);
        for (const href of remoteInStyles(bytes?.toString('utf8') ?? ''))
          findings.fault(
            `The styles “${shownName(entry.name)}” draw “${shownName(href)}” from the internet; the book has to carry it itself.`,
          );
      } else await tested(archive, entry);
    }
  }

  linesWith(copyrightPage: number | null): EpubFacts['lines'] {
    const last = this.documents.length - LAST;
    return this.documents
      .filter(({ page }) => page <= FIRST || page > last || page === copyrightPage)
      .flatMap(({ page, path, lines }) =>
        lines
          .slice(0, page === copyrightPage ? LINES_OF_COPYRIGHT : LINES_OF_ONE)
          .map((text) => ({ page, document: path.slice(0, 500), text })),
      );
  }
}

/** Reads every document once, in reading order first, and looks through all the rest of the archive. */
export async function readBody(sources: Sources): Promise<Body> {
  const reader = new BodyReader(sources);
  await reader.spine();
  await reader.rest();
  const { documents, isbns, scripts } = reader;
  return { documents, isbns, scripts, linesWith: (page) => reader.linesWith(page) };
}
