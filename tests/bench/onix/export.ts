import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openApp } from '../../../src/app.ts';
import { lay } from './lay.ts';
import { writeReady } from './ready.ts';

// A process of its own for each half of the bench: `export.js lay FOLDER FORMATS` fills a catalogue, `export.js measure
// FOLDER FORMATS` writes it out, then the same records from memory, and prints what both took as JSON.

const TODAY = '2026-11-25';

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
  const written = cpu(writeReady(file, join(folder, 'ready.xml'), formats, TODAY));
  return { records: made.records, bytes: made.bytes, exported, written, memoryBefore, memoryPeak };
}

const [what, folder = '', formats = '0'] = process.argv.slice(2);
const file = join(folder, 'onix.ledger');
if (what === 'lay') lay(file, Number(formats));
else console.log(JSON.stringify(measure(folder, file, Number(formats))));
