import { createHash } from 'node:crypto';
import type { Box, PageFacts } from '../../../contract/proof-checks/facts.ts';
import type { PdfDocument } from './document.ts';
import { type Look, lookOver } from './look.ts';
import { type FontSeen, type ImageSeen, lookAtObjects } from './objects.ts';
import type { PdfPage } from './page.ts';
import { type Placing, placed, type Rect } from './place.ts';

/** A picture of so many pixels to the inch shows ink and colour; one of 6 × 9 inches has 216 × 324. */
const LOOK_DPI = 36;
const LOOK_PIXELS = 1_000_000;

/** What is known of one page once it was looked at. */
export interface PageSeen {
  facts: PageFacts;
  fonts: FontSeen[];
  /** Its text as PDFium reads it, for looking whether a number may be in it. */
  text: string;
  /** What of it could not be looked at, in a sentence. */
  unread: string | null;
}

type Boxes = ReturnType<PdfDocument['boxes']>;

/** Boxes of a page from the top left of what is shown; those that the file does not state are null. */
function boxesOf(boxes: Boxes, placing: Placing): Pick<PageFacts, 'media' | 'crop' | 'bleed' | 'trim'> {
  const box = (rect: Rect | null) => (rect === null ? null : placed(rect, placing));
  const media = boxes.media ?? placing.shown;
  return {
    media: placed(media, placing),
    // PDFium gives the media box where no other is stated.
    crop: boxes.crop && same(boxes.crop, media) ? null : box(boxes.crop),
    bleed: box(boxes.bleed),
    trim: box(boxes.trim),
  };
}

const same = (a: Rect, b: Rect) =>
  a.left === b.left && a.bottom === b.bottom && a.right === b.right && a.top === b.top;

/** A page of which nothing is known but its boxes. */
export function unseenPage(boxes: Boxes): PageFacts {
  const shown = boxes.crop ?? boxes.media ?? { left: 0, bottom: 0, right: 0, top: 0 };
  return {
    ...boxesOf(boxes, { shown, rotate: 0, userUnit: 1 }),
    rotate: 0,
    userUnit: 1,
    blank: null,
    colour: null,
    bleeds: null,
    images: [],
    textPrint: '',
    lookPrint: null,
  };
}

const printOf = (text: string) =>
  createHash('sha256')
    .update(text.normalize('NFC').replace(/\s|\ufffe/gu, ''))
    .digest('hex')
    .slice(0, 32);

/** Reads an open page. */
export function pageSeen(page: PdfPage, boxes: Boxes): PageSeen {
  const { placing } = page;
  const placedBoxes = boxesOf(boxes, placing);
  const text = page.plainText();
  const objects = lookAtObjects(page, boxes.trim ?? placing.shown);
  const whole: Box = { xPt: 0, yPt: 0, widthPt: page.widthPt, heightPt: page.heightPt };
  const picture = page.render(LOOK_DPI, LOOK_PIXELS);
  const look = picture && lookOver(picture, page.widthPt, placedBoxes.trim ?? whole);
  return {
    facts: {
      ...placedBoxes,
      rotate: placing.rotate,
      userUnit: placing.userUnit,
      blank: look ? look.blank : null,
      colour: objects.coloured || (look ? look.colour : null),
      bleeds: look ? look.bleeds : null,
      images: objects.images.map((image) => imageFacts(image, placing, look)),
      textPrint: printOf(text),
      lookPrint: look ? look.lookPrint : null,
    },
    fonts: objects.fonts,
    text,
    unread: unreadOf(page.number, objects.more, look !== null),
  };
}

function unreadOf(page: number, more: boolean, looked: boolean): string | null {
  if (!looked) return `Page ${page} takes too long to draw and was not looked at.`;
  return more
    ? `Page ${page} holds more than can be looked at; fonts, pictures and colours may be missing.`
    : null;
}

/** FPDF_COLORSPACE_DEVICEGRAY and _CALGRAY. */
const GREYS = new Set([1, 4]);
const MOST_PPI = 100_000;

function imageFacts(image: ImageSeen, placing: Placing, look: Look | null): PageFacts['images'][number] {
  const box = placed(image.rect, placing);
  const grey = GREYS.has(image.colourSpace) || look?.colourIn(box) === false;
  return {
    box,
    widthPx: image.widthPx,
    heightPx: image.heightPx,
    ppi: Math.min(MOST_PPI, Math.round((image.pixelsPer72 / placing.userUnit) * 10) / 10),
    colour:
      image.bitsPerPixel === 1 ? 'black and white' : grey ? 'grey' : look === null ? 'unknown' : 'colour',
  };
}
