import { existsSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PART_BYTES } from '../../src/contract/files.ts';
import { Staging } from '../../src/store/staging.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue();
});
afterEach(() => catalogue.close());

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

describe('files that lie ready', () => {
  it('come back byte for byte, in parts', () => {
    const bytes = Uint8Array.from({ length: PART_BYTES + 12_345 }, (_, at) => (at * 31) % 256);
    const { file } = catalogue.call('files.put', {
      name: 'a.bin',
      part: base64(bytes.subarray(0, PART_BYTES)),
    });
    const whole = catalogue.call('files.put', { file, part: base64(bytes.subarray(PART_BYTES)) });
    expect(whole).toEqual({ file, bytes: bytes.length });
    const parts: Buffer[] = [];
    for (let from: number | null = 0; from !== null; ) {
      const answer: { part: string; next: number | null } = catalogue.call('files.get', { file, from });
      parts.push(Buffer.from(answer.part, 'base64'));
      from = answer.next;
    }
    expect(parts).toHaveLength(2);
    expect(Buffer.concat(parts).equals(Buffer.from(bytes))).toBe(true);
  });

  it('are refused in parts that are too large, not base64 or of no known file', () => {
    const large = base64(new Uint8Array(PART_BYTES + 3));
    expect(catalogue.refusal('files.put', { part: large })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'part',
    });
    expect(catalogue.refusal('files.put', { part: '%%%' })).toMatchObject({ code: 'BAD_INPUT' });
    const unknown = '0'.repeat(32);
    expect(catalogue.refusal('files.get', { file: unknown })).toMatchObject({ code: 'NOT_FOUND' });
    expect(catalogue.refusal('files.get', { file: '../../etc/passwd' })).toMatchObject({ code: 'BAD_INPUT' });
    expect(catalogue.call('files.drop', { file: unknown })).toEqual({ dropped: false });
  });
});

describe('the folder of files', () => {
  const folders = () => readdirSync(tmpdir()).filter((name) => name.startsWith('edition-ledger-files-'));

  it('goes when it is closed, and keeps a bounded number of files', () => {
    const before = new Set(folders());
    const staging = new Staging();
    const first = staging.begin('first');
    for (let count = 0; count < 40; count += 1) staging.begin(`file ${count}`);
    expect(() => staging.size(first)).toThrow('no longer lies ready');
    const [own] = folders().filter((name) => !before.has(name));
    expect(own).toBeDefined();
    staging.close();
    expect(existsSync(`${tmpdir()}/${own}`)).toBe(false);
  });

  it('keeps nothing of a file whose making fails', () => {
    const staging = new Staging();
    const broken = () =>
      staging.make('half.csv', (sink) => {
        sink.write('begun');
        throw new Error('midway');
      });
    expect(broken).toThrow('midway');
    const made = staging.make('whole.csv', (sink) => {
      sink.write('é');
      sink.write(Uint8Array.of(65, 66));
      sink.write('c'.repeat(300_000));
    });
    expect(made.bytes).toBe(2 + 2 + 300_000);
    expect(Buffer.from(staging.read(made.file)).toString('utf8').startsWith('éABccc')).toBe(true);
    staging.close();
  });
});
