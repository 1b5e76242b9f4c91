/** Byte order marks of the two orders of UTF-16 (Unicode, section 23.8). */
const UTF_16 = [
  { mark: [0xff, 0xfe], name: 'utf-16le' },
  { mark: [0xfe, 0xff], name: 'utf-16be' },
] as const;

/**
 * The text of a file: UTF-16 where its mark says so, UTF-8 where it reads as such, and otherwise windows-1252, in
 * which older spreadsheets save. A byte order mark is left out.
 */
export function decodeText(bytes: Uint8Array): string {
  const wide = UTF_16.find(({ mark }) => mark.every((byte, place) => bytes[place] === byte));
  if (wide) return new TextDecoder(wide.name).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
