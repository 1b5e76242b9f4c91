import { EventEmitter } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { openApp } from '../../src/app.ts';
import { captureErrors, ErrorLog } from '../../src/host/log.ts';

const fresh = () => mkdtempSync(join(tmpdir(), 'edition-ledger-log-'));
const now = () => new Date('2026-11-25T10:00:00Z');

function captured(crash = vi.fn()) {
  const file = join(fresh(), 'logs/errors.log');
  const shown: unknown[] = [];
  const told = Object.assign(new EventEmitter(), {
    stderr: { write: (chunk: unknown) => shown.push(chunk) > 0 },
  });
  captureErrors(
    new ErrorLog({ file, heading: 'Edition Ledger 1.2.3, Debian', now }),
    crash,
    told as unknown as NodeJS.Process,
  );
  return { file, shown, told, text: () => readFileSync(file, 'utf8') };
}

test('what is told on the error stream stands in the log too, each with its moment', () => {
  const { file, told, text, shown } = captured();
  expect(existsSync(file)).toBe(false);
  told.stderr.write('[ab12cd34] Error: deep inside\n');
  told.stderr.write(Buffer.from('and more\n'));
  expect(text()).toBe(
    '\n2026-11-25T10:00:00.000Z Edition Ledger 1.2.3, Debian\n' +
      '2026-11-25T10:00:00.000Z [ab12cd34] Error: deep inside\n' +
      '2026-11-25T10:00:00.000Z and more\n',
  );
  expect(shown).toHaveLength(2);
});

test.each(['uncaughtException', 'unhandledRejection'])(
  'an error of kind %s is logged before the end',
  (kind) => {
    const seen: string[] = [];
    const caught = captured(vi.fn(() => seen.push(readFileSync(caught.file, 'utf8'))));
    caught.told.emit(kind, new TypeError('nobody caught this'));
    expect(seen).toHaveLength(1);
    expect(seen[0]).toContain('TypeError: nobody caught this\n    at ');
  },
);

test('a log that grew too large begins anew, and the one before is kept', () => {
  const file = join(fresh(), 'errors.log');
  const log = new ErrorLog({ file, heading: 'Edition Ledger', limit: 300, now });
  for (let n = 0; n < 12; n += 1) log.write(`error ${n}`);
  expect(readFileSync(file, 'utf8').length).toBeLessThan(400);
  expect(readFileSync(file, 'utf8')).toMatch(/^\n\S+ Edition Ledger\n/);
  expect(readFileSync(file, 'utf8')).toContain('error 11');
  expect(readFileSync(join(file, '../before-errors.log'), 'utf8').length).toBeLessThan(400);
});

test('a log that cannot be written does not bring the program down', () => {
  const blocked = join(fresh(), 'file');
  writeFileSync(blocked, '');
  expect(() => new ErrorLog({ file: join(blocked, 'errors.log'), heading: 'x' }).write('y')).not.toThrow();
});

test('the user reads the log through the contract: its newest whole lines, and only where one is kept', () => {
  const folder = fresh();
  const log = join(folder, 'errors.log');
  const app = openApp({ file: join(folder, 'a.ledger'), log });
  expect(app.call('program.log', {})).toEqual({ ok: true, value: { file: log, text: '' } });
  writeFileSync(log, `${'é'.repeat(70_000)}\nlast line\n`);
  expect(app.call('program.log', {})).toEqual({ ok: true, value: { file: log, text: 'last line\n' } });
  app.close();
  const without = openApp({ file: join(folder, 'b.ledger') });
  expect(without.call('program.log', {})).toEqual({ ok: true, value: { file: null, text: '' } });
  without.close();
});
