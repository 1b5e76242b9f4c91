import type { Source } from '../pdf/source.ts';

/** Bytes that are read by parts; whoever opened them closes them. */
export type Bytes = Pick<Source, 'size' | 'read'>;

/** A part of a file, or bytes at hand. */
export type Piece = Uint8Array | { of: Bytes; from: number; length: number };

/** Pieces one after another, none of them copied. */
export function joined(pieces: readonly Piece[]): Bytes {
  const starts: number[] = [];
  let size = 0;
  for (const piece of pieces) {
    starts.push(size);
    size += piece.length;
  }
  /** The piece that a position lies in. */
  const pieceAt = (position: number) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= position) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  return {
    size,
    read(position, into) {
      if (position < 0 || position + into.length > size) return false;
      let done = 0;
      for (let i = pieceAt(position); done < into.length; i += 1) {
        const piece = pieces[i];
        if (piece === undefined) return false;
        const skip = position + done - (starts[i] ?? 0);
        const part = into.subarray(done, done + Math.min(into.length - done, piece.length - skip));
        if (piece instanceof Uint8Array) part.set(piece.subarray(skip, skip + part.length));
        else if (!piece.of.read(piece.from + skip, part)) return false;
        done += part.length;
      }
      return true;
    },
  };
}

/** So many bytes from a position on; null where they are not all there. */
export function bytesAt(source: Bytes, position: number, count: number): Buffer | null {
  const into = Buffer.alloc(count);
  return source.read(position, into) ? into : null;
}
