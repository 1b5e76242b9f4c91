import type { Box, TextLine } from '../../../contract/proof-checks/facts.ts';
import type { Engine } from './engine.ts';
import { type Placing, placed, type Rect, union } from './place.ts';

type Turned = TextLine['turned'];

/** A character that stands on the page, or one that was put in between: a space or the end of a line. */
interface Character {
  text: string;
  rect: Rect | null;
  turned: Turned;
  /** Of what PDFium reads it: all characters of one object are turned alike. */
  object: number;
}

/** The text of a page with places: `text` is all of it, with '\n' at the end of each line. */
export interface PageText {
  text: string;
  lines: Omit<TextLine, 'page'>[];
  /** Where a part of `text` stands, from an index up to another; null where nothing of it is seen. */
  boxOf(start: number, end: number): Box | null;
}

/** A gap of so many times the height of the letters parts a line in two: columns, or the panels of a cover. */
const COLUMN_GAP = 3;
/** Letters are taken to be at least so high, in units: a row of full stops is no column. */
const LEAST_HEIGHT = 4;
const LINE_CHARACTERS = 2_000;

/** PDFium's signs for a hyphen at the end of a line. */
const BROKEN = new Set([0x2, 0xfffe]);

export function readText(engine: Engine, textPage: number, placing: Placing, most: number): PageText {
  const lines: Character[][] = [[]];
  const count = Math.min(engine.lib.FPDFText_CountChars(textPage), most);
  for (let i = 0; i < count; i += 1) {
    const line = lines.at(-1) ?? [];
    const character = readCharacter(engine, textPage, i, placing, line.at(-1));
    if (character === null) {
      if (line.length > 0) lines.push([]);
    } else if (startsAnew(line, character)) lines.push([character]);
    else line.push(character);
  }
  const seen = lines.flatMap((characters) => {
    const whole = characters.reduce<Rect | null>((box, { rect }) => (rect ? union(box, rect) : box), null);
    const turned = characters.find(({ rect }) => rect !== null)?.turned ?? 0;
    return whole === null ? [] : [{ characters, turned, box: placed(whole, placing) }];
  });
  return pageText(inReadingOrder(seen), placing);
}

/** A line with its place on the page as shown. */
interface SeenLine {
  characters: Character[];
  turned: Turned;
  box: Box;
}

/** How much further on in reading one line stands than another that is turned like it: down, left, up or right. */
function furtherOn({ box: a, turned }: SeenLine, { box: b }: SeenLine): number {
  if (turned === 0) return b.yPt - a.yPt;
  if (turned === 180) return a.yPt - b.yPt;
  return turned === 90 ? a.xPt - b.xPt : b.xPt - a.xPt;
}

/** PDFium tells the lines of turned text from the last to the first: such a run of lines is put the right way round. */
function inReadingOrder(lines: readonly SeenLine[]): SeenLine[] {
  const ordered: SeenLine[] = [];
  for (let start = 0, end = 0; start < lines.length; start = end) {
    const turned = lines[start]?.turned;
    while (end < lines.length && lines[end]?.turned === turned) end += 1;
    const run = lines.slice(start, end);
    const backwards = run.filter((line, i) => {
      const next = run[i + 1];
      return next !== undefined && furtherOn(line, next) < 0;
    }).length;
    ordered.push(...(turned !== 0 && backwards > (run.length - 1) / 2 ? run.reverse() : run));
  }
  return ordered;
}

/** The next character; null for the end of a line. */
function readCharacter(
  engine: Engine,
  textPage: number,
  index: number,
  placing: Placing,
  before: Character | undefined,
): Character | null {
  const { lib } = engine;
  const code = lib.FPDFText_GetUnicode(textPage, index);
  if (code === 13 || code === 10) return null;
  const text = BROKEN.has(code) ? '-' : code < 32 || code > 0x10ffff ? ' ' : String.fromCodePoint(code);
  if (lib.FPDFText_IsGenerated(textPage, index) === 1)
    return { text, rect: null, turned: before?.turned ?? 0, object: before?.object ?? 0 };
  const object = lib.FPDFText_GetTextObject(textPage, index);
  const known = before !== undefined && before.object === object && object !== 0;
  return {
    text,
    rect: text.trim() === '' ? null : charBox(engine, textPage, index),
    turned: known ? before.turned : turnOf(engine, textPage, index, placing.rotate),
    object,
  };
}

/** FPDFText_GetCharBox gives left, right, bottom and top. */
function charBox({ lib, doubles }: Engine, textPage: number, index: number): Rect | null {
  const [left = Number.NaN, right = 0, bottom = 0, top = 0] =
    doubles(4, (at) => lib.FPDFText_GetCharBox(textPage, index, at, at + 8, at + 16, at + 24)) ?? [];
  return [left, right, bottom, top].every(Number.isFinite) ? { left, right, bottom, top } : null;
}

/** Clockwise turn of a baseline as shown: by its direction (a, b) on the page, y upwards, and the page's own turn. */
function turnOf({ lib, floats }: Engine, textPage: number, index: number, rotate: number): Turned {
  const [a = 1, b = 0] = floats(6, (address) => lib.FPDFText_GetMatrix(textPage, index, address)) ?? [];
  const quarters = Math.round(Math.atan2(b, a) / (Math.PI / 2));
  return ((((rotate - quarters * 90) % 360) + 360) % 360) as Turned;
}

/** Whether a character belongs to another line than the ones before it: turned otherwise, or far away. */
function startsAnew(line: readonly Character[], { rect, turned }: Character): boolean {
  const before = line.findLast((one) => one.rect !== null);
  if (rect === null || !before?.rect) return false;
  if (before.turned !== turned) return true;
  const upright = turned % 180 === 0;
  const tall = (r: Rect | null) => (r === null ? 0 : upright ? r.top - r.bottom : r.right - r.left);
  const height = Math.max(LEAST_HEIGHT, tall(rect), ...line.slice(-20).map((one) => tall(one.rect)));
  const apart = Math.max(
    rect.left - before.rect.right,
    before.rect.left - rect.right,
    rect.bottom - before.rect.top,
    before.rect.bottom - rect.top,
  );
  return apart > COLUMN_GAP * height;
}

function pageText(lines: readonly SeenLine[], placing: Placing): PageText {
  let text = '';
  /** For each UTF-16 unit of the text, where it stands. */
  const rects: (Rect | null)[] = [];
  const add = (part: string, rect: Rect | null) => {
    text += part;
    for (let i = 0; i < part.length; i += 1) rects.push(rect);
  };
  const placedLines = lines.map(({ characters, box, turned }) => {
    for (const character of characters) add(character.text, character.rect);
    add('\n', null);
    const words = characters.map((character) => character.text).join('');
    return { text: words.trim().slice(0, LINE_CHARACTERS), box, turned };
  });
  return {
    text,
    lines: placedLines,
    boxOf(start, end) {
      const whole = rects
        .slice(start, end)
        .reduce<Rect | null>((box, rect) => (rect ? union(box, rect) : box), null);
      return whole === null ? null : placed(whole, placing);
    },
  };
}
