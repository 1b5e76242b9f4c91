import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../../src/app.ts';
import { type MessageTerms, writeProduct } from '../../../src/exchange/onix/write.ts';
import { xmlOut } from '../../../src/exchange/onix/xml-out.ts';
import { houseOf, recordsOf } from '../../../src/queries/onix-records.ts';
import { wrap } from '../../../src/store/connection.ts';
import { formatIds } from '../../../src/store/onix.ts';
import { lay } from './lay.ts';

// A process of its own for each half of the bench: `export.js lay FOLDER FORMATS` fills a catalogue, `export.js measure
// FOLDER FORMATS` writes it out, then the same records from memory, and prints what both took as JSON.

const TODAY = '2026-11-25';
/** Ready records written again and again for the other side of the ratio: as many as stand in memory with ease. */
const READY = 2_000;
const TERMS: MessageTerms = { version: '3.1', tags: 'reference', content: 'full' };

export interface Measured {
  records: number;
  bytes: number;
  /** Processor time, in milliseconds. */
  exported: number;
  written: number;
  /** Most memory the process held before the export and during it, in MB; 0 where the system does not tell. */
  memoryBefore: number;
  memoryPeak: number;
}

/** Processor time of some work, in milliseconds. */
function cpu(work: () => void): number {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

/** Most memory since the last call, in MB. Linux counts anew when asked to (proc(5), clear_refs). */
function peakMemory(): number {
  try {
    const held = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1];
    writeFileSync('/proc/self/clear_refs', '5');
    return Number(held ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** The same bytes from ready records, through the same writer, into a file. */
function writeReady(file: string, path: string, formats: number): () => void {
  const raw = new Database(file, { readonly: true });
  const db = wrap(raw);
  const house = houseOf(db, TODAY);
  const ids = formatIds(db, { kind: 'all' });
  const { records } = recordsOf(db, ids.slice(0, READY));
  raw.close();
  return () => {
    const handle = openSync(path, 'w');
    const out = xmlOut(TERMS.tags);
    for (let done = 0; done < formats; done += READY) {
      for (const [index, record] of records.entries()) {
        writeProduct(out, TERMS, house, record);
        if (index % 100 === 99) writeSync(handle, out.take());
      }
    }
    closeSync(handle);
  };
}

function measure(folder: string, file: string, formats: number): Measured {
  const app = openApp({ file, today: () => TODAY });
  let made = { file: '', records: 0, bytes: 0 };
  const memoryBefore = peakMemory();
  const exported = cpu(() => {
    const answer = app.call('exports.make', { as: 'onix' });
    if (!answer.ok) throw new Error(answer.error.message);
    made = answer.value as typeof made;
  });
  const memoryPeak = peakMemory();
  app.call('files.drop', { file: made.file });
  app.close();
  const written = cpu(writeReady(file, join(folder, 'ready.xml'), formats));
  return { records: made.records, bytes: made.bytes, exported, written, memoryBefore, memoryPeak };
}

const [what, folder = '', formats = '0'] = process.argv.slice(2);
const file = join(folder, 'onix.ledger');
if (what === 'lay') lay(file, Number(formats));
else console.log(JSON.stringify(measure(folder, file, Number(formats))));
