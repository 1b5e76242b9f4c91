import { readdirSync } from 'node:fs';

/** `npm run bench -- NAME` runs tests/bench/NAME.ts, which exports `bench()`; without a name the table of all sizes. */
const names = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.slice(0, -3))
  .sort();
const name = process.argv[2] ?? 'scale';

if (!names.includes(name)) {
  console.error(`There is no bench '${name}'; there are: ${names.join(', ')}.`);
  process.exitCode = 2;
} else {
  const module: { bench: () => void | Promise<void> } = await import(`./${name}.ts`);
  await module.bench();
}
