import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/** Bytes that are read by parts, wherever they lie. */
export interface Source {
  readonly size: number;
  /** Copies `into.length` bytes from a position; false where they are not all there. */
  read(position: number, into: Uint8Array): boolean;
  close(): void;
}

/** Read at once from disk: PDFium asks for many small pieces that lie together. */
const WINDOW_BYTES = 256 * 1024;

export function bytesSource(bytes: Uint8Array): Source {
  return {
    size: bytes.length,
    read(position, into) {
      if (position < 0 || position + into.length > bytes.length) return false;
      into.set(bytes.subarray(position, position + into.length));
      return true;
    },
    close() {},
  };
}

/**
 * A file read by parts, so that its size does not matter to memory.
 * @throws where it cannot be opened
 */
export function fileSource(path: string): Source {
  const file = openSync(path, 'r');
  const { size } = fstatSync(file);
  const window = new Uint8Array(Math.min(WINDOW_BYTES, size));
  let start = 0;
  let length = 0;
  const fill = (position: number, into: Uint8Array) => {
    let done = 0;
    while (done < into.length) {
      const count = readSync(file, into, done, into.length - done, position + done);
      if (count === 0) break;
      done += count;
    }
    return done;
  };
  return {
    size,
    read(position, into) {
      if (position < 0 || position + into.length > size) return false;
      if (into.length > window.length) return fill(position, into) === into.length;
      if (position < start || position + into.length > start + length) {
        start = Math.min(position, size - window.length);
        length = fill(start, window);
      }
      if (position + into.length > start + length) return false;
      into.set(window.subarray(position - start, position - start + into.length));
      return true;
    },
    close: () => closeSync(file),
  };
}
