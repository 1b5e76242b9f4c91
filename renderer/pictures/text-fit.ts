/** Mean width of a letter as a part of the type size; a little more than most faces have. */
const LETTER = 0.56;

/** A text that fits a width in pixels, ended with an ellipsis where it had to be cut. */
export function fitted(text: string, width: number, size: number): string {
  const room = Math.max(1, Math.floor(width / (size * LETTER)));
  const letters = [...text];
  return letters.length <= room
    ? text
    : `${letters
        .slice(0, Math.max(1, room - 1))
        .join('')
        .trimEnd()}…`;
}
