import { fuzz as fuzzFinal } from './epub.ts';
import { fuzz as fuzzOnix } from './onix.ts';
import { FUZZED, type Fuzzed, type FuzzResult, fuzz } from './readers.ts';

/** `npm run fuzz -- KIND [INPUTS] [SEED]` gives a reader damaged copies of real files, 100,000 unless told otherwise. */
const [kind = '', inputs = '100000', seed = '20261125'] = process.argv.slice(2);

const begun = performance.now();
const tell = ({ inputs: done, taken, refused, refusedWhole, slowestMs }: FuzzResult) => {
  const [n, t, r, w] = [done, taken, refused, refusedWhole].map((count) => count.toLocaleString('en'));
  const seconds = Math.round((performance.now() - begun) / 1000);
  console.log(
    `${kind}, seed ${seed}: ${n} damaged files in ${seconds} s, ${t} taken (${w} of them with refused rows, and so refused whole), ${r} refused in a sentence; the slowest took ${Math.round(slowestMs)} ms. Nothing broke, hung or was left behind.`,
  );
};

if (kind === 'onix') {
  fuzzOnix(Number(inputs), Number(seed));
} else if (kind === 'epub' || kind === 'audio') {
  await fuzzFinal(kind, Number(inputs));
} else if (!Object.hasOwn(FUZZED, kind)) {
  console.error(
    `Readers: ${[...Object.keys(FUZZED), 'onix', 'epub', 'audio'].join(', ')}. Run one with: npm run fuzz -- KIND [INPUTS] [SEED]`,
  );
  process.exitCode = 2;
} else {
  const result = fuzz(kind as Fuzzed, Number(inputs), Number(seed), tell);
  if (result.inputs % 5_000 !== 0) tell(result);
}
