import { escapeText } from './xml-out.ts';

// Descriptions are plain text, or text with the plain XHTML marks that ONIX allows (ONIX_XHTML_Subset.xsd). What
// is not well made of those marks is plain text, and its brackets are escaped.

const BLOCKS = new Set(['p', 'ul', 'ol', 'li', 'dl', 'dt', 'dd']);
const INLINE = new Set(['strong', 'em', 'b', 'i', 'cite', 'sub', 'sup']);
const MARK = /<(\/?)([a-z]+)(\s*\/)?>/g;

/** What may stand directly inside an element; anything else makes the whole text plain. */
function fits(child: string, parent: string | undefined): boolean {
  if (child === 'li') return parent === 'ul' || parent === 'ol';
  if (child === 'dt' || child === 'dd') return parent === 'dl';
  if (parent === 'ul' || parent === 'ol' || parent === 'dl') return false;
  if (parent === undefined || parent === 'li' || parent === 'dd') return true;
  return !BLOCKS.has(child);
}

/** Whether a list holds nothing but its entries: text right inside it is refused by the schema. */
const LISTS = new Set(['ul', 'ol', 'dl']);

/** The text as well-formed XHTML of the allowed marks, or null when it is plain text. */
function markup(text: string): string | null {
  if (!/<[a-z]/.test(text)) return null;
  const inside: string[] = [];
  let out = '';
  let end = 0;
  let filled = true;
  for (const mark of text.matchAll(MARK)) {
    const between = text.slice(end, mark.index);
    end = mark.index + mark[0].length;
    if (/<[a-z/!?]/i.test(between)) return null;
    if (LISTS.has(inside.at(-1) ?? '') && between.trim() !== '') return null;
    out += escapeMarked(between);
    const [, closing, name = '', selfClosed] = mark;
    if (name === 'br') {
      if (closing || !selfClosed || LISTS.has(inside.at(-1) ?? '')) return null;
      out += '<br/>';
    } else if (closing) {
      if (inside.pop() !== name || (LISTS.has(name) && !filled)) return null;
      filled = true;
      out += `</${name}>`;
    } else {
      if (selfClosed || !(BLOCKS.has(name) || INLINE.has(name)) || !fits(name, inside.at(-1))) return null;
      filled = !LISTS.has(name);
      inside.push(name);
      out += `<${name}>`;
    }
  }
  if (inside.length > 0 || /<[a-z/!?]/i.test(text.slice(end))) return null;
  return out + escapeMarked(text.slice(end));
}

/** Text between marks: an entity that is already written as one stays one. */
function escapeMarked(text: string): string {
  return escapeText(text).replace(
    /&amp;(amp|lt|gt|quot|apos|#\d{1,6}|#x[0-9a-fA-F]{1,5});/g,
    (whole, name) => (name.startsWith('#') && escapeText(decodeNumber(name)) === '' ? whole : `&${name};`),
  );
}

function decodeNumber(name: string): string {
  const code = name.startsWith('#x') ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code > 0x10ffff ? '' : String.fromCodePoint(code);
}

/** A description as ONIX text: ready XML content and whether it is XHTML (textformat 05) or plain (06). */
export function descriptionXml(written: string): { xml: string; xhtml: boolean } {
  const text = written.replace(/\r\n?/g, '\n');
  const marked = markup(text);
  if (marked !== null) return { xml: marked, xhtml: true };
  if (!text.includes('\n')) return { xml: escapeText(text), xhtml: false };
  const paragraphs = text.split(/\n\s*\n/).filter((paragraph) => paragraph.trim() !== '');
  const xml = paragraphs
    .map((paragraph) => `<p>${escapeText(paragraph.trim()).replace(/\s*\n\s*/g, '<br/>')}</p>`)
    .join('');
  return { xml, xhtml: true };
}

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** A description without its marks: what it says, with paragraphs apart. Plain text stays as it is. */
export function plainDescription(text: string): string {
  const marked = markup(text);
  if (marked === null) return text.trim();
  return plainOfXhtml(marked);
}

/** The plain text of XHTML: blocks apart by an empty line, breaks as line ends. */
export function plainOfXhtml(xhtml: string): string {
  return xhtml
    .replace(/\s+/g, ' ')
    .replace(/<br\s*\/?>\s*/g, '\n')
    .replace(/<\/?(?:p|ul|ol|dl|div|h[1-6])(?:\s[^<>]*)?>/g, '\n\n')
    .replace(/<(?:li|dt|dd|tr)(?:\s[^<>]*)?>/g, '\n')
    .replace(/<[^<>]*>/g, '')
    .replace(/&(amp|lt|gt|quot|apos|#\d{1,6}|#x[0-9a-fA-F]{1,5});/g, (_, name: string) =>
      name.startsWith('#') ? decodeNumber(name) : (NAMED[name] ?? ''),
    )
    .replace(/[ \t]*\n[ \t]*/g, '\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
