import type { ReadProduct } from '../../rules/onix/products.ts';
import { type Element, text } from './element.ts';
import { readProduct3 } from './read-3.ts';
import { readProduct21 } from './read-21.ts';
import type { ReadHouse } from './read-product.ts';
import { MessageParser, OnixProblem } from './xml-in.ts';

export interface MessageHead {
  /** '3.1', '3.0' or '2.1'. */
  version: string;
  sender: string;
}

/** The version of a message by its root, and why it cannot be read otherwise. */
function versionOf(name: string, attributes: Record<string, string>): string {
  if (name !== 'ONIXMessage' && name !== 'ONIXmessage')
    throw new OnixProblem(
      `This is no ONIX message: its first element is '${name.slice(0, 60)}'. Choose the file a system wrote as 'ONIX for Books'.`,
    );
  const release = attributes.release ?? '';
  const space = /\/onix\/(\d\.\d)\//.exec(attributes.xmlns ?? '')?.[1];
  const version = space ?? release;
  if (version.startsWith('3.')) return version === '3.0' ? '3.0' : '3.1';
  if (version === '' || version.startsWith('2.')) return '2.1';
  throw new OnixProblem(
    `This message is of ONIX release ${version.slice(0, 20)}; Edition Ledger reads 3.1, 3.0 and 2.1.`,
  );
}

const ENCODING = /^<\?xml[^>]*\sencoding\s*=\s*["']([A-Za-z][\w.-]{0,40})["']/;

/** The decoder for a file's bytes: by its first bytes, else by its XML declaration, else UTF-8. */
function decoderFor(start: Uint8Array): TextDecoder {
  let name = 'utf-8';
  if (start[0] === 0xff && start[1] === 0xfe) name = 'utf-16le';
  else if (start[0] === 0xfe && start[1] === 0xff) name = 'utf-16be';
  else name = ENCODING.exec(String.fromCharCode(...start.subarray(0, 200)).trimStart())?.[1] ?? name;
  try {
    return new TextDecoder(name, { fatal: true });
  } catch {
    throw new OnixProblem(
      `The file says it is written in '${name}', which cannot be read here; save it as UTF-8.`,
    );
  }
}

function decoded(decoder: TextDecoder, bytes: Uint8Array, more: boolean): string {
  try {
    return decoder.decode(bytes, { stream: more });
  } catch {
    throw new OnixProblem(
      `The file holds bytes that are no ${decoder.encoding.toUpperCase()}; save it anew in the encoding it names.`,
    );
  }
}

const COMMON = { row: 0, line: 0, notification: '', isbnText: '', isbn13: null, isbnProblem: null } as const;

const blank = (row: number, line: number): ReadProduct => ({
  ...COMMON,
  row,
  line,
  edition: {},
  format: {},
  status: null,
  publisher: '',
  related: [],
  works: [],
  kept: [],
  notes: [],
});

/** What a header says for all products of its message. */
function headerDefaults(header: Element): Partial<Pick<ReadHouse, 'language' | 'currency'>> {
  const language = text(header, 'DefaultLanguageOfText');
  const currency = text(header, 'DefaultCurrencyCode');
  return {
    ...(/^[a-z]{3}$/.test(language) ? { language } : {}),
    ...(/^[A-Z]{3}$/.test(currency) ? { currency } : {}),
  };
}

const senderOf = (header: Element): string => {
  const sender = header.children.find((part) => typeof part !== 'string' && part.name === 'Sender');
  const name = sender && typeof sender !== 'string' ? text(sender, 'SenderName') : '';
  return name || text(header, 'FromCompany');
};

/** Bytes of a file that are read at a time. */
const CHUNK = 256 * 1024;

/** A file part by part; `part` answers at most so many bytes from one on, none behind the end. */
export function* inChunks(part: (from: number, most: number) => Uint8Array): Generator<Uint8Array> {
  for (let from = 0; ; ) {
    const bytes = part(from, CHUNK);
    if (bytes.length === 0) return;
    yield bytes;
    from += bytes.length;
  }
}

/**
 * Reads a message from its bytes, product by product, so that no more than one of them stands in memory. Answers
 * what the message says of itself. Throws OnixProblem for what is no ONIX message or was made to hurt.
 */
export function readMessage(
  chunks: Iterable<Uint8Array>,
  house: ReadHouse,
  each: (product: ReadProduct) => void,
): MessageHead {
  const head: MessageHead = { version: '', sender: '' };
  let row = 0;
  let known = house;
  const parser = new MessageParser({
    root: (name, attributes) => {
      head.version = versionOf(name, attributes);
    },
    header: (element) => {
      head.sender = senderOf(element);
      known = { ...house, ...headerDefaults(element) };
    },
    product: (element, line) => {
      row += 1;
      const product = blank(row, line);
      const reading = { product, house: known, version: head.version };
      if (head.version === '2.1') readProduct21(reading, element);
      else readProduct3(reading, element);
      each(product);
    },
  });
  let decoder: TextDecoder | undefined;
  for (const bytes of chunks) {
    decoder ??= decoderFor(bytes);
    parser.write(decoded(decoder, bytes, true));
  }
  if (decoder === undefined) throw new OnixProblem('The file is empty.');
  parser.write(decoded(decoder, new Uint8Array(), false));
  parser.close();
  return head;
}
