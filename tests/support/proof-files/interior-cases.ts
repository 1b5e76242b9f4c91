import { encode } from 'fast-png';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { drawInterior, through } from './interior.ts';
import { isHere } from './programs.ts';
import type { Planted } from './tally.ts';

/** An interior with what it has to come to: nothing for a clean one. */
export interface InteriorCase {
  /** Null where the program that makes it is not on this machine. */
  make: () => Promise<Uint8Array | null> | Uint8Array | null;
  expected: Planted;
  record?: Partial<ProofRecord>;
}

const has = {
  qpdf: isHere('qpdf'),
  gs: isHere('gs'),
  groff: isHere('gropdf'),
  soffice: isHere('soffice', '--version'),
};
/** A file of an outside program, where that is here. */
export const by =
  (program: keyof typeof has, make: InteriorCase['make']): InteriorCase['make'] =>
  () =>
    has[program] ? make() : null;

/** A file of PDFKit. */
export const drawn =
  (...args: Parameters<typeof drawInterior>): InteriorCase['make'] =>
  () =>
    drawInterior(...args);
/** A grey picture of so many pixels each way. */
export const picture = (pixels: number, shade = 128) =>
  Buffer.from(
    encode({ width: pixels, height: pixels, channels: 1, data: new Uint8Array(pixels * pixels).fill(shade) }),
  );

/** The interior sent through qpdf. */
export const qpdf = (...args: string[]) =>
  by('qpdf', async () => through(await drawInterior(), 'qpdf', ['IN', 'OUT', ...args]));
/** What Ghostscript is asked for to write a PDF. */
export const ghost = (...args: string[]) => [
  '-q',
  '-dBATCH',
  '-dNOPAUSE',
  '-dSAFER',
  '-sDEVICE=pdfwrite',
  ...args,
];
