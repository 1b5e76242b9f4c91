import { isRemote } from './paths.ts';
import { attribute, readXml, type XmlTrouble } from './xml.ts';

/** What one document of the book says. */
export interface DocumentText {
  lines: string[];
  scripts: number;
  /** What it draws from the network: element and address. */
  remote: { element: string; href: string }[];
  /** Values of epub:type on its body and sections. */
  types: Set<string>;
  title: string;
  pictures: number;
  trouble: XmlTrouble | null;
}

/** Elements that begin a line of their own (HTML, flow content; display by default). */
const BLOCKS = new Set(
  'address article aside blockquote body br center dd details dialog div dl dt fieldset figcaption figure footer form h1 h2 h3 h4 h5 h6 header hgroup hr li main nav ol p pre section summary table tbody td tfoot th thead tr ul'.split(
    ' ',
  ),
);
/** What is not read out: styles, programs, and readings beside characters. */
const SILENT = new Set(['head', 'script', 'style', 'rt', 'rp', 'template']);
/** Elements that fetch what they name. */
const FETCHES: Readonly<Record<string, string>> = {
  img: 'src',
  image: 'href',
  script: 'src',
  iframe: 'src',
  embed: 'src',
  object: 'data',
  link: 'href',
  audio: 'src',
  video: 'src',
  source: 'src',
  track: 'src',
};
const LONGEST_LINE = 2_000;
const MOST_LINES = 20_000;

const words = (text: string | undefined) => (text ?? '').trim().toLowerCase().split(/\s+/).filter(Boolean);

class TextReader {
  readonly lines: string[] = [];
  readonly remote: DocumentText['remote'] = [];
  readonly types = new Set<string>();
  scripts = 0;
  pictures = 0;
  title = '';
  #line = '';
  #silent = 0;
  #inTitle = false;

  open(name: string, attributes: Readonly<Record<string, string>>): void {
    if (name === 'script' && !/json|text\/plain/i.test(attribute(attributes, 'type') ?? ''))
      this.scripts += 1;
    this.scripts += Object.keys(attributes).filter((key) => /^on[a-z]+$/i.test(key)).length;
    if (/^\s*javascript:/i.test(attribute(attributes, 'href') ?? '')) this.scripts += 1;
    if (name === 'img' || name === 'image' || name === 'svg') this.pictures += 1;
    this.#fetches(name, attributes);
    for (const type of words(attributes['epub:type'])) if (this.types.size < 200) this.types.add(type);
    if (name === 'title') this.#inTitle = true;
    if (SILENT.has(name)) this.#silent += 1;
    else if (BLOCKS.has(name)) this.endLine();
  }

  #fetches(name: string, attributes: Readonly<Record<string, string>>): void {
    const key = FETCHES[name];
    const href = key === undefined ? '' : (attribute(attributes, key) ?? '').trim();
    const fetched = name !== 'link' || /stylesheet/i.test(attribute(attributes, 'rel') ?? '');
    if (fetched && isRemote(href) && this.remote.length < 50) this.remote.push({ element: name, href });
  }

  text(text: string): void {
    if (this.#inTitle && this.title.length < 1_000) this.title += text;
    if (this.#silent > 0) return;
    // A line of a whole book without an end would grow for ever.
    if (this.#line.length > LONGEST_LINE * 4) this.endLine();
    this.#line += text.replaceAll(/\s+/g, ' ');
  }

  close(name: string): void {
    if (name === 'title') this.#inTitle = false;
    if (SILENT.has(name)) this.#silent = Math.max(0, this.#silent - 1);
    else if (BLOCKS.has(name)) this.endLine();
  }

  endLine(): void {
    const line = this.#line.replaceAll(/ +/g, ' ').trim();
    this.#line = '';
    for (let at = 0; at < line.length && this.lines.length < MOST_LINES; at += LONGEST_LINE)
      this.lines.push(line.slice(at, at + LONGEST_LINE));
  }
}

/** Reads one XHTML document: its lines as they stand, and what it runs or fetches. Nothing in it is executed. */
export function readDocument(bytes: Uint8Array): DocumentText {
  const reader = new TextReader();
  const trouble = readXml(bytes, {
    open: (name, attributes) => reader.open(name, attributes),
    text: (text) => reader.text(text),
    close: (name) => reader.close(name),
  });
  reader.endLine();
  const { lines, scripts, remote, types, title, pictures } = reader;
  return { lines, scripts, remote, types, title: title.trim(), pictures, trouble };
}
