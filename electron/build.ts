import { copyFile, mkdir, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build } from 'esbuild';
import { collectLicences, licencesText } from '../src/host/pages/licences.ts';

const program = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

// A test names a folder of its own, since several builds may run at once.
const out = program(process.argv[2] ?? 'out');
const target = `${out}/electron`;

/**
 * Bundles the shell into out/electron: main and store as modules, the preload as one CommonJS file, as the
 * sandbox demands. Two folders deep like the sources, so that paths to migrations/ hold. Only better-sqlite3
 * stays outside, for its native part; what reads final files finds its WebAssembly beside the bundles.
 */
await rm(target, { recursive: true, force: true });
const common: BuildOptions = {
  bundle: true,
  platform: 'node',
  target: 'node24',
  external: ['electron', 'better-sqlite3'],
  logLevel: 'warning',
  legalComments: 'none',
};
await build({
  ...common,
  entryPoints: [program('electron/main.ts'), program('electron/store.ts')],
  outdir: target,
  format: 'esm',
});
await build({
  ...common,
  entryPoints: [program('electron/preload.ts')],
  outfile: `${target}/preload.cjs`,
  format: 'cjs',
});
await build({
  ...common,
  entryPoints: { reader: program('src/readings/worker.ts'), backup: program('src/errands/backup-worker.ts') },
  outdir: target,
  format: 'esm',
  // CommonJS packages inside a module still ask for Node's own modules by `require`.
  banner: {
    js: "import { createRequire as requireFor } from 'node:module'; const require = requireFor(import.meta.url);",
  },
});
const require = createRequire(import.meta.url);
for (const wasm of ['@embedpdf/pdfium/pdfium.wasm', 'zxing-wasm/reader/zxing_reader.wasm'])
  await copyFile(require.resolve(wasm), `${target}/${basename(wasm)}`);
await mkdir(out, { recursive: true });
await writeFile(`${out}/licences.txt`, licencesText(collectLicences(program('.'))));
