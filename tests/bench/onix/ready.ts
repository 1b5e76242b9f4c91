import { closeSync, openSync, writeSync } from 'node:fs';
import Database from 'better-sqlite3';
import { type MessageTerms, writeProduct } from '../../../src/exchange/onix/write.ts';
import { xmlOut } from '../../../src/exchange/onix/xml-out.ts';
import { houseOf, recordsOf } from '../../../src/queries/onix-records.ts';
import { wrap } from '../../../src/store/connection.ts';
import { formatIds } from '../../../src/store/onix.ts';

/** Ready records written again and again for the other side of the ratio: as many as stand in memory with ease. */
const READY = 2_000;
const TERMS: MessageTerms = { version: '3.1', tags: 'reference', content: 'full' };

/** The same bytes from ready records, through the same writer, into a file. */
export function writeReady(file: string, path: string, formats: number, today: string): () => void {
  const raw = new Database(file, { readonly: true });
  const db = wrap(raw);
  const house = houseOf(db, today);
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
