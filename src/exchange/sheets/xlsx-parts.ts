import { unzipSync } from 'fflate';
import { SaxesParser } from 'saxes';
import { TableTrouble } from './table.ts';

/** Unpacked sizes a workbook may claim, each part and all together; a zip that unpacks to more is an attack. */
const MOST_PART = 512 * 1024 * 1024;
const MOST_WHOLE = 768 * 1024 * 1024;
/** Said of every workbook that is damaged or is none. */
export const UNREADABLE = 'This XLSX file cannot be read; open it in a spreadsheet program and save it anew.';

/** Whether bytes begin as a zip does. */
export function isXlsx(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/** Unpacks the parts of a workbook that are wanted. Throws TableTrouble. */
export function unpack(bytes: Uint8Array, wanted: (path: string) => boolean): Map<string, Uint8Array> {
  let whole = 0;
  try {
    const parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!wanted(name)) return false;
        whole += originalSize;
        if (originalSize > MOST_PART || whole > MOST_WHOLE)
          throw new TableTrouble('This XLSX file unpacks to far more than a table holds; it is refused.');
        return true;
      },
    });
    return new Map(Object.entries(parts));
  } catch (error) {
    if (error instanceof TableTrouble) throw error;
    throw new TableTrouble(UNREADABLE);
  }
}

/** What a part of the workbook is told while it is read: local names of elements, attributes without prefixes. */
export interface Listener {
  open?(name: string, attribute: (name: string) => string | undefined): void;
  text?(text: string): void;
  close?(name: string): void;
}

const local = (name: string) => name.slice(name.indexOf(':') + 1);

/** Pieces that the parser is given at once. */
const PIECE = 1024 * 1024;

/** Reads XML piece by piece. Document types are refused: a workbook has none, and entities are how XML attacks. */
export function readXml(bytes: Uint8Array, listener: Listener): void {
  const parser = new SaxesParser({ position: false });
  parser.on('doctype', () => {
    throw new TableTrouble(UNREADABLE);
  });
  parser.on('error', () => {
    throw new TableTrouble(UNREADABLE);
  });
  parser.on('opentag', (tag) =>
    listener.open?.(local(tag.name), (name) => {
      const value =
        tag.attributes[name] ?? Object.entries(tag.attributes).find(([key]) => local(key) === name)?.[1];
      return typeof value === 'object' ? value.value : value;
    }),
  );
  parser.on('text', (text) => listener.text?.(text));
  parser.on('cdata', (text) => listener.text?.(text));
  parser.on('closetag', (tag) => listener.close?.(local(tag.name)));
  const decoder = new TextDecoder('utf-8');
  for (let at = 0; at < bytes.length; at += PIECE)
    parser.write(decoder.decode(bytes.subarray(at, at + PIECE), { stream: true }));
  parser.close();
}
