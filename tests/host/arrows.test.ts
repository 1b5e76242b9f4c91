import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { PROGRAM } from '../../src/host/home.ts';

interface Cruised {
  summary: { totalCruised: number; violations: { from: string; to: string; rule: { name: string } }[] };
}

function cruise(folder: string, ...what: string[]): Cruised {
  const bin = join(PROGRAM, 'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs');
  const config = join(PROGRAM, '.dependency-cruiser.cjs');
  const args = [bin, '--config', config, '--output-type', 'json', ...what];
  const ran = spawnSync(process.execPath, args, {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return JSON.parse(ran.stdout) as Cruised;
}

/** Files of a small program, each with the imports given. */
function program(files: Record<string, string[]>): string {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-arrows-'));
  symlinkSync(join(PROGRAM, 'node_modules'), join(folder, 'node_modules'));
  for (const [path, imports] of Object.entries(files)) {
    mkdirSync(join(folder, dirname(path)), { recursive: true });
    const lines = imports.map((name, n) => `import * as m${n} from '${name}';\nconsole.log(m${n});`);
    writeFileSync(join(folder, path), `${lines.join('\n')}\nexport const here: string = '${path}';\n`);
  }
  return folder;
}

test('the checker reads the whole program: a parser that reads nothing would pass everything', () => {
  const { summary } = cruise(PROGRAM, 'src', 'electron', 'renderer');
  expect(summary.totalCruised).toBeGreaterThan(150);
});

test('imports against the arrows are caught, one of each kind; the same files without them pass', () => {
  const wrong: Record<string, string[]> = {
    'src/contract/index.ts': ['../rules/isbn/index.ts', 'react', 'node:fs'],
    'src/rules/isbn/index.ts': ['../../store/file.ts', 'node:path'],
    'src/store/file.ts': ['../queries/works.ts'],
    'src/commands/works.ts': ['../queries/works.ts', '../host/server.ts'],
    'src/queries/works.ts': ['../commands/works.ts'],
    'src/exchange/csv.ts': ['../store/file.ts', 'better-sqlite3'],
    'src/app.ts': ['./host/server.ts'],
    'src/thread/client.ts': ['../store/file.ts'],
    'src/host/server.ts': ['../store/file.ts', '../../electron/main.ts', 'electron'],
    'src/cli/run.ts': ['../commands/works.ts', '../host/server.ts', '../../tests/help.ts'],
    'electron/main.ts': ['../src/host/server.ts', '../renderer/main.tsx', 'drizzle-orm'],
    'renderer/main.tsx': ['../src/store/file.ts', '../src/app.ts', '../src/nowhere.ts', 'node:fs'],
    'tests/help.ts': [],
  };
  const { summary } = cruise(program(wrong), 'src', 'electron', 'renderer');
  const caught = new Set(summary.violations.map(({ from, to }) => `${from} → ${to}`));
  for (const [file, imports] of Object.entries(wrong)) {
    const found = [...caught].filter((line) => line.startsWith(`${file} → `));
    expect([file, found.length]).toEqual([file, imports.length]);
  }
  const right = Object.fromEntries(Object.keys(wrong).map((path) => [path, []]));
  expect(cruise(program(right), 'src', 'electron', 'renderer').summary.violations).toEqual([]);
});
