/** Breaks a word that fits on no line of its own. */
function* pieces(word: string, width: number): Generator<string> {
  const characters = [...word];
  for (let at = 0; at < characters.length; at += width) yield characters.slice(at, at + width).join('');
}

/**
 * Text set in lines of at most `width` characters (code points), the first line after `first`, the others after
 * as many blanks. Runs of white space become one blank; a word longer than a line is broken.
 */
export function wrap(text: string, width: number, first = ''): string[] {
  const room = width - first.length;
  const lines: string[] = [];
  let line = '';
  let length = 0;
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    for (const piece of pieces(word, room)) {
      const size = [...piece].length;
      if (length > 0 && length + 1 + size > room) {
        lines.push(line);
        line = piece;
        length = size;
      } else {
        line = length > 0 ? `${line} ${piece}` : piece;
        length += size + (length > 0 ? 1 : 0);
      }
    }
  }
  if (length > 0) lines.push(line);
  const blank = ' '.repeat(first.length);
  return lines.map((text, index) => `${index === 0 ? first : blank}${text}`);
}
