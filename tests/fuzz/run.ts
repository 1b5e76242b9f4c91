import { fuzz as fuzzFinal } from './epub.ts';
import { fuzz as fuzzOnix } from './onix.ts';
import { FUZZED, type Fuzzed, fuzz } from './readers.ts';

/** `npm run fuzz -- KIND [INPUTS]` gives a reader damaged copies of real files, 100,000 unless told otherwise. */
const [kind = '', inputs = '100000'] = process.argv.slice(2);

if (kind === 'onix') {
  fuzzOnix(Number(inputs));
} else if (kind === 'epub' || kind === 'audio') {
  await fuzzFinal(kind, Number(inputs));
} else if (!Object.hasOwn(FUZZED, kind)) {
  console.error(
    `Readers: ${[...Object.keys(FUZZED), 'onix', 'epub', 'audio'].join(', ')}. Run one with: npm run fuzz -- KIND [INPUTS]`,
  );
  process.exitCode = 2;
} else {
  const { taken, refused, slowestMs } = fuzz(kind as Fuzzed, Number(inputs));
  console.log(
    `${kind}: ${Number(inputs).toLocaleString('en')} damaged files, ${taken} taken, ${refused} refused in a sentence; the slowest took ${Math.round(slowestMs)} ms. Nothing broke, hung or was left behind.`,
  );
}
