import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rangeTable } from '../../rules/isbn/range-table.ts';
import { RangeMessageError, refuseOlder, writeRangeData } from './message.ts';
import { readRangeMessage } from './read.ts';

const RESOURCE = fileURLToPath(new URL('../../../resources/isbn-ranges.json', import.meta.url));

/** `npm run ranges -- FILE [OUTPUT]`: makes the bundled table anew from the agency's range message, if it is no older. */
function generate(file: string | undefined, output: string): string {
  if (file === undefined) throw new RangeMessageError('Name the file: npm run ranges -- RangeMessage.xml');
  const data = readRangeMessage(bytesOf(file));
  refuseOlder(data, rangeTable());
  writeFileSync(`${output}.new`, writeRangeData(data));
  renameSync(`${output}.new`, output);
  return `${data.groups.length} groups of ${data.issued} (serial ${data.serial ?? 'not given'}) written to ${output}.`;
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown error';
    throw new RangeMessageError(`The file '${file}' cannot be read (${code}).`);
  }
}

try {
  const [file, output = RESOURCE] = process.argv.slice(2);
  console.log(generate(file, output));
} catch (error) {
  if (!(error instanceof RangeMessageError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
