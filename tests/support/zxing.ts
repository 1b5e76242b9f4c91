import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

let prepared = false;

/** Gives the reader its program from the package; left alone it would look for it on the network. */
function prepare(): void {
  if (prepared) return;
  const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer } });
  prepared = true;
}

/** The book number in a picture, with its add-on where there is one; 'nothing' when none is found. */
export async function readWithZxing(png: Uint8Array): Promise<string> {
  prepare();
  const found = await readBarcodes(png, { formats: ['EAN13'], eanAddOnSymbol: 'Read', tryHarder: true });
  const texts = found.map((result) => result.text).filter((text) => /^97[89]/.test(text));
  return texts.sort((a, b) => b.length - a.length)[0] ?? 'nothing';
}
