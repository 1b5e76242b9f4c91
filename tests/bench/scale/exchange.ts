import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { LAST_DAY } from '../../support/generator/index.ts';
import { bareInserts, importCsv, TABLES } from '../csv/import.ts';
import { writeReady } from '../onix/ready.ts';
import type { Line } from './line.ts';

// Files in and out. By themselves, with memory and more sides: npm run bench -- onix, npm run bench -- csv.

const exporting: Line = {
  name: 'ONIX export of the whole catalogue',
  against: 'as many ready records through the same writer',
  most: { ratio: 2 },
  sides: (world) => {
    let last = '';
    return {
      once: true,
      prepare: () => {
        if (last !== '') world.call('files.drop', { file: last });
      },
      ours: () => {
        last = world.call<{ file: string }>('exports.make', { as: 'onix' }).file;
      },
      bare: writeReady(world.file, join(world.folder, 'ready.xml'), world.formats, LAST_DAY),
    };
  },
};

const importing: Line = {
  name: 'CSV import of as many rows into a new catalogue',
  against: "bare prepared inserts of the same rows, the file's triggers on",
  most: { ratio: 4 },
  sides: ({ folder, formats }) => {
    const file = join(folder, `imported-${formats}.ledger`);
    return {
      once: true,
      ours: () => {
        for (const end of ['', '-wal', '-shm', '-hold']) rmSync(`${file}${end}`, { force: true });
        return importCsv(file, formats);
      },
      bare: () => bareInserts(folder, file, true, TABLES),
    };
  },
};

export const EXCHANGE: readonly Line[] = [exporting, importing];
