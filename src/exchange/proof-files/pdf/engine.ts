import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { init, type WrappedPdfiumModule } from '@embedpdf/pdfium';

/**
 * The most memory that a file may make PDFium take. A page of a book with its pictures needs a fraction of it; a file
 * that asks for more ends the engine with a trap, and nothing else.
 */
const MOST_MEMORY_BYTES = 768 * 1024 * 1024;

/** Room for what functions of PDFium write into: eight numbers of 8 bytes, and some more. */
const SCRATCH_BYTES = 256;

/** PDFium as WebAssembly: memory of its own, no file system, no network, and no scripts of a PDF are ever run. */
export interface Engine {
  readonly lib: WrappedPdfiumModule;
  /** The memory at this moment: it may grow with any call, so a view is never kept. */
  bytes(): Uint8Array;
  alloc(size: number): number;
  free(address: number): void;
  /** Calls `fill` with an address of scratch memory and answers `count` 32-bit floats from there; null where it fails. */
  floats(count: number, fill: (address: number) => boolean): number[] | null;
  /** As `floats`, for 64-bit floats. */
  doubles(count: number, fill: (address: number) => boolean): number[] | null;
  /** As `floats`, for unsigned 32-bit integers. */
  integers(count: number, fill: (address: number) => boolean): number[] | null;
  /** Calls `start` with an IFSDK_PAUSE that asks to stop once so many milliseconds have passed. */
  pausing(milliseconds: number, start: (pause: number) => number): number;
  /** A string of a function that is asked twice: for its size in bytes, then for the text. */
  text(encoding: 'utf-16le' | 'utf-8', ask: (address: number, bytes: number) => number): string;
}

/** No string of a PDF is taken that is longer. */
const MOST_TEXT_BYTES = 1024 * 1024;

let binary: Promise<ArrayBuffer> | null = null;

/** Where the program's WebAssembly lies: beside the bundled program, or in the package. */
async function readBinary(): Promise<ArrayBuffer> {
  const beside = await readFile(new URL('./pdfium.wasm', import.meta.url)).catch(() => null);
  const bytes =
    beside ?? (await readFile(createRequire(import.meta.url).resolve('@embedpdf/pdfium/pdfium.wasm')));
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
}

/** Starts a fresh engine (some 60 ms). One engine reads one file; after a trap it is thrown away. */
export async function startEngine(): Promise<Engine> {
  binary ??= readBinary();
  const wasmBinary = await binary;
  let memory: WebAssembly.Memory | null = null;
  const lib = await init({
    print: () => {},
    printErr: () => {},
    instantiateWasm(imports, done) {
      const env = imports.env as Record<string, unknown>;
      const resize = env.emscripten_resize_heap as (bytes: number) => number;
      env.emscripten_resize_heap = (bytes: number) => (bytes >>> 0 > MOST_MEMORY_BYTES ? 0 : resize(bytes));
      WebAssembly.instantiate(wasmBinary, imports).then(({ instance, module }) => {
        memory = instance.exports.memory as WebAssembly.Memory;
        (done as (instance: WebAssembly.Instance, module: WebAssembly.Module) => void)(instance, module);
      });
      return {};
    },
  });
  if (memory === null) throw new Error('PDFium has no memory.');
  lib.PDFiumExt_Init();
  return wrap(lib, memory);
}

function wrap(lib: WrappedPdfiumModule, memory: WebAssembly.Memory): Engine {
  const { malloc, free } = lib.pdfium.wasmExports;
  const alloc = (size: number) => {
    const address = malloc(size);
    if (address === 0) throw new WebAssembly.RuntimeError('out of memory');
    return address;
  };
  const scratch = alloc(SCRATCH_BYTES);
  let until = 0;
  const pause = alloc(12);
  const needsPause = lib.pdfium.addFunction(() => (performance.now() > until ? 1 : 0), 'ii');
  new Uint32Array(memory.buffer, pause, 3).set([1, needsPause, 0]);
  return {
    lib,
    bytes: () => new Uint8Array(memory.buffer),
    alloc,
    free,
    floats: (count, fill) => (fill(scratch) ? [...new Float32Array(memory.buffer, scratch, count)] : null),
    doubles: (count, fill) => (fill(scratch) ? [...new Float64Array(memory.buffer, scratch, count)] : null),
    integers: (count, fill) => (fill(scratch) ? [...new Uint32Array(memory.buffer, scratch, count)] : null),
    pausing(milliseconds, start) {
      until = performance.now() + milliseconds;
      return start(pause);
    },
    text(encoding, ask) {
      const size = ask(0, 0);
      if (size <= 0 || size > MOST_TEXT_BYTES) return '';
      const address = alloc(size);
      try {
        const written = Math.min(ask(address, size), size);
        const text = new TextDecoder(encoding).decode(new Uint8Array(memory.buffer, address, written));
        return text.replace(/\0+$/, '');
      } finally {
        free(address);
      }
    },
  };
}
