import { unreadable } from '../watch.ts';

/** Letters of a name that are shown in a sentence. */
const SHOWN = 80;

/** A name from a file as it may stand in a sentence: short, and without what steers a terminal or a page. */
export function shownName(name: string): string {
  const plain = name.replaceAll(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '\u{FFFD}');
  return plain.length > SHOWN ? `${plain.slice(0, SHOWN)}…` : plain;
}

/**
 * Refuses a name that leads out of the archive: absolute, with a drive, a backslash, or '..' (OCF 3.3, File names and paths,
 * and common practice). Nothing is ever unpacked here; whoever is sent the file may unpack it.
 */
export function refuseOutside(name: string): void {
  const outside =
    name === '' ||
    /^(?:[/\\]|[a-z]:)/i.test(name) ||
    /[\\\p{Cc}]/u.test(name) ||
    name.split('/').some((part) => part === '..');
  if (outside)
    throw unreadable(
      `The archive holds a file under the name “${shownName(name)}”, which leads out of it; such a file can do harm where it is unpacked. Make the archive again.`,
    );
}
