export { blockNumber, blocksOverlap, indexInBlock, parseBlock } from './block.ts';
export { checkDigit10, checkDigit13, toIsbn10, toIsbn13 } from './check-digit.ts';
export { parseIsbn, tryIsbn } from './parse.ts';
export { RangeTableError } from './range-data.ts';
export {
  bundledRangeTable,
  loadRangeTable,
  putRangeTableInUse,
  type RangeTable,
  rangeTable,
} from './range-table.ts';
export { firstAdjacent, freeRuns, nextFree, type Run, runsOf } from './runs.ts';
export { type Runway, runway, sizeToBuy } from './runway.ts';
export { type BlockSize, blockSizes } from './sizes.ts';
export { hyphenate, shownIsbn, splitIsbn } from './split.ts';
export type {
  BlockResult,
  BlockShape,
  Isbn,
  IsbnForm,
  IsbnParts,
  IsbnProblem,
  IsbnProblemCode,
  ParsedIsbn,
  ParseResult,
} from './types.ts';
export { PROBLEM_CODES } from './types.ts';
