import type { ReaderOptions } from '../../../src/readings/context.ts';

/** The stand-in reader's thread, with less time or memory where a test says so. */
export function proofThread(limits: Partial<Omit<ReaderOptions, 'entry'>> = {}): ReaderOptions {
  return { entry: new URL('./stand-in-reader.ts', import.meta.url), timeMs: 60_000, heapMb: 256, ...limits };
}
