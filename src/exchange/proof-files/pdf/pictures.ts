import { crc32, deflateSync } from 'node:zlib';
import type { PageFacts, PagePicture, PdfFacts } from '../../../contract/proof-checks/facts.ts';
import type { PdfPage } from './page.ts';
import type { Picture } from './render.ts';

/** The longer side of a picture of a page. */
const LONGEST_PX = 480;
const MOST_PICTURES = 60;
const FIRST_PAGES = 12;
const LAST_PAGES = 2;

/** Pages that a line of the result is likely to point to: those with numbers, and the first of each sort of trouble. */
export function tellingPages({ isbns, fonts, pages }: PdfFacts): number[] {
  const [first] = pages;
  const size = ({ trim, crop, media }: PageFacts) => trim ?? crop ?? media;
  const unlike = (page: PageFacts) =>
    first !== undefined &&
    (page.rotate !== first.rotate ||
      Math.abs(size(page).widthPt - size(first).widthPt) > 1 ||
      Math.abs(size(page).heightPt - size(first).heightPt) > 1);
  const coarsest = ({ images }: PageFacts) =>
    Math.min(Number.POSITIVE_INFINITY, ...images.map(({ ppi }) => ppi));
  const lowest = Math.min(...pages.map(coarsest));
  const found = [
    pages.findIndex(({ colour }) => colour === true),
    pages.findIndex(({ bleeds }) => bleeds === true),
    pages.findIndex(unlike),
    pages.findIndex((page) => coarsest(page) === lowest && Number.isFinite(lowest)),
  ];
  return [
    ...found.filter((index) => index >= 0).map((index) => index + 1),
    ...fonts
      .filter(({ embedded, drawn }) => !embedded && !drawn)
      .map(({ firstPage }) => firstPage)
      .slice(0, 1),
    ...isbns.map(({ page }) => page),
  ];
}

/** Pages of which a picture is kept: the first and last, and then those where something was found, in order. */
export function picturedPages(pageCount: number, found: Iterable<number>): number[] {
  const pages = new Set<number>();
  for (let page = 1; page <= Math.min(FIRST_PAGES, pageCount); page += 1) pages.add(page);
  for (let page = Math.max(1, pageCount - LAST_PAGES + 1); page <= pageCount; page += 1) pages.add(page);
  for (const page of found) if (pages.size < MOST_PICTURES) pages.add(page);
  return [...pages].sort((a, b) => a - b);
}

/** A picture of a page; null where it takes too long to draw. */
export function pictureOf(page: PdfPage): PagePicture | null {
  const longest = Math.max(page.widthPt, page.heightPt, 1);
  const picture = page.render((72 * LONGEST_PX) / longest, LONGEST_PX * LONGEST_PX);
  if (picture === null) return null;
  return {
    page: page.number,
    widthPx: picture.width,
    heightPx: picture.height,
    png: encodePng(picture).toString('base64'),
  };
}

/** PNG, ISO/IEC 15948: red, green and blue of eight bits, rows without a filter. */
function encodePng({ width, height, rgba }: Picture): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2], 8);
  const rows = Buffer.alloc(height * (width * 3 + 1));
  let to = 0;
  for (let i = 0; i < rgba.length; i += 4) {
    if (i % (width * 4) === 0) to += 1;
    rows[to] = rgba[i] ?? 255;
    rows[to + 1] = rgba[i + 1] ?? 255;
    rows[to + 2] = rgba[i + 2] ?? 255;
    to += 3;
  }
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const parts = [chunk('IHDR', header), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))];
  return Buffer.concat([signature, ...parts]);
}

/** Length, name, content and checksum of name and content. */
function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(content.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}
