import { readFile } from '../exchange/proof-files/read.ts';
import { serveReader } from './serve-reader.ts';

await serveReader(readFile);
