export { blockNumber, indexInBlock, parseBlock } from './block.ts';
export { checkDigit10, checkDigit13, toIsbn10, toIsbn13 } from './check-digit.ts';
export { parseIsbn } from './parse.ts';
export { RangeTableError } from './range-data.ts';
export { loadRangeTable, type RangeTable, rangeTable } from './range-table.ts';
export { hyphenate, splitIsbn } from './split.ts';
export type {
  BlockResult,
  BlockShape,
  Isbn,
  IsbnForm,
  IsbnParts,
  IsbnProblem,
  IsbnProblemCode,
  ParseResult,
} from './types.ts';
export { PROBLEM_CODES } from './types.ts';
