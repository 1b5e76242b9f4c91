import { inflateSync } from 'node:zlib';
import type { Source } from './source.ts';

/** What PDFium does not tell, looked for in the file's own bytes. */
export interface Swept {
  /** Actions that run a script or start a program, wherever they hang. */
  scripts: number;
  /** The PDF/X version as the metadata packet (XMP) claims it. */
  pdfx: string | null;
  /** Points to a unit by the number of the page's object (ISO 32000-1, table 30: UserUnit). */
  userUnits: ReadonlyMap<number, number>;
}

const PART_BYTES = 4 * 1024 * 1024;
/** A dictionary or tag that lies across the end of a part is seen whole in the next. */
const OVERLAP_BYTES = 64 * 1024;
/** A packed stream is looked into up to this size, and all of them together up to the second. */
const MOST_UNPACKED = 16 * 1024 * 1024;
const MOST_UNPACKED_IN_ALL = 256 * 1024 * 1024;
const MOST_PACKED = 16 * 1024 * 1024;

const PDFX = /GTS_PDFXVersion(?:\s*=\s*["']|[^<>]{0,40}>)\s*(PDF\/X[^"'<]{1,40})/;
const ACTION = /\/S\s*\/(?:JavaScript|Launch)\b/g;
const USER_UNIT = /\/UserUnit\s+(\d+(?:\.\d+)?)/;

/** Goes once through all bytes of a file. `step` is called between parts. */
export function sweep(source: Source, step: (done: number) => void): Swept {
  const found = new Findings(source);
  for (let start = 0; start < source.size; start += PART_BYTES - OVERLAP_BYTES) {
    step(start);
    const part = Buffer.alloc(Math.min(PART_BYTES, source.size - start));
    if (!source.read(start, part)) break;
    found.look(part, start);
    if (start + part.length >= source.size) break;
  }
  return found;
}

class Findings implements Swept {
  pdfx: string | null = null;
  readonly userUnits = new Map<number, number>();
  readonly #source: Source;
  /** Positions of actions, so that one in the overlap counts once. */
  readonly #actions = new Set<string>();
  readonly #streams = new Set<number>();
  #unpacked = 0;

  constructor(source: Source) {
    this.#source = source;
  }

  get scripts(): number {
    return this.#actions.size;
  }

  look(part: Buffer, start: number): void {
    for (const token of ['/JavaScript', '/Launch'])
      for (const at of places(part, token))
        this.#actionsIn(around(part, at, 40), `${start + at - Math.min(at, 40)}`);
    for (const at of places(part, 'GTS_PDFXVersion')) this.#claim(around(part, at, 120));
    for (const at of places(part, '/UserUnit')) this.#unitBefore(part, at);
    for (const token of ['/ObjStm', '/Metadata'])
      for (const at of places(part, token)) this.#openStream(part, at, start);
  }

  #actionsIn(text: string, origin: string): void {
    for (const match of text.matchAll(ACTION)) this.#actions.add(`${Number(origin) + match.index}`);
  }

  #claim(text: string): void {
    this.pdfx ??= PDFX.exec(text)?.[1]?.trim() ?? null;
  }

  /** A page written in plain: 'N 0 obj << … /UserUnit 2'. */
  #unitBefore(part: Buffer, at: number): void {
    const before = part.toString('latin1', Math.max(0, at - 4096), at);
    const object = [...before.matchAll(/(\d+)\s+\d+\s+obj\b/g)].at(-1)?.[1];
    const unit = USER_UNIT.exec(part.toString('latin1', at, at + 40))?.[1];
    if (object !== undefined && unit !== undefined) this.userUnits.set(Number(object), Number(unit));
  }

  /** The stream whose dictionary a name stands in, where it is packed. */
  #openStream(part: Buffer, at: number, start: number): void {
    const head = part.toString('latin1', Math.max(0, at - 1024), at + 1024);
    const centre = Math.min(at, 1024);
    const opened = head.lastIndexOf('obj', centre);
    const begins = /stream\r?\n/g;
    begins.lastIndex = centre;
    const begin = begins.exec(head);
    if (opened < 0 || begin === null) return;
    const entries = head.slice(opened, begin.index);
    if (!/\/Type\s*\/(?:ObjStm|Metadata)\b/.test(entries) || entries.includes('endobj')) return;
    const position = start + at - centre + begin.index + begin[0].length;
    if (this.#streams.has(position) || !/\/FlateDecode\b/.test(entries)) return;
    this.#streams.add(position);
    const unpacked = this.#unpack(position, Number(/\/Length\s+(\d+)(?!\s+\d+\s+R)/.exec(entries)?.[1] ?? 0));
    if (unpacked === null) return;
    this.#claimsIn(unpacked);
    if (/\/ObjStm\b/.test(entries)) this.#objects(unpacked, entries, position);
  }

  #unpack(position: number, stated: number): Buffer | null {
    const left = this.#source.size - position;
    const length = Math.min(stated > 0 ? stated : MOST_PACKED, MOST_PACKED, left);
    const packed = Buffer.alloc(length);
    if (length <= 0 || this.#unpacked > MOST_UNPACKED_IN_ALL || !this.#source.read(position, packed))
      return null;
    try {
      const unpacked = inflateSync(packed, { maxOutputLength: MOST_UNPACKED });
      this.#unpacked += unpacked.length;
      return unpacked;
    } catch {
      return null;
    }
  }

  #claimsIn(unpacked: Buffer): void {
    for (const at of places(unpacked, 'GTS_PDFXVersion')) this.#claim(around(unpacked, at, 120));
  }

  /** An object stream: N pairs of object number and offset from First, then the objects (ISO 32000-1, 7.5.7). */
  #objects(unpacked: Buffer, entries: string, position: number): void {
    const text = unpacked.toString('latin1');
    let count = 0;
    for (const match of text.matchAll(ACTION)) this.#actions.add(`${position}:${match.index}:${count++}`);
    if (!text.includes('/UserUnit')) return;
    const first = Number(/\/First\s+(\d+)/.exec(entries)?.[1] ?? 0);
    const numbers = text.slice(0, first).trim().split(/\s+/).map(Number);
    for (let i = 0; i + 1 < numbers.length; i += 2) {
      const from = first + (numbers[i + 1] ?? 0);
      const unit = USER_UNIT.exec(text.slice(from, first + (numbers[i + 3] ?? text.length)))?.[1];
      if (unit !== undefined) this.userUnits.set(numbers[i] ?? 0, Number(unit));
    }
  }
}

function* places(bytes: Buffer, token: string): Generator<number> {
  for (
    let at = bytes.indexOf(token, 0, 'latin1');
    at >= 0;
    at = bytes.indexOf(token, at + token.length, 'latin1')
  )
    yield at;
}

const around = (bytes: Buffer, at: number, reach: number) =>
  bytes.toString('latin1', Math.max(0, at - reach), at + reach);
