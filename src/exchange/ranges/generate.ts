import { readFileSync, writeFileSync } from 'node:fs';
import { loadRangeTable } from '../../rules/isbn/range-table.ts';
import { readRangeMessage, writeRangeData } from './read.ts';

const OUTPUT = new URL('../../../resources/isbn-ranges.json', import.meta.url);

const file = process.argv[2];
if (file === undefined) {
  console.error('Name the range message: npm run ranges -- RangeMessage.xml');
  process.exit(2);
}
const data = readRangeMessage(readFileSync(file, 'utf8'));
const table = loadRangeTable(data);
writeFileSync(OUTPUT, writeRangeData(data));
console.log(`${table.groups.length} groups of ${table.date} written.`);
