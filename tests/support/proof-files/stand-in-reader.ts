import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Step } from '../../../src/contract/jobs.ts';
import type { Reading } from '../../../src/contract/proof-checks/facts.ts';
import { Refusal } from '../../../src/contract/refusal.ts';
import { serveReader } from '../../../src/readings/serve-reader.ts';

/** Memory that is held on to until there is none left. */
function swallow(): never {
  const held: string[][] = [];
  for (;;) held.push(Array.from({ length: 100_000 }, (_, index) => `${index} ${held.length}`));
}

/** Works until it is ended from outside. */
async function goOn(step: Step): Promise<never> {
  for (let page = 1; ; page += 1) {
    step(page, 1_000_000, 'pages read');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** The facts of a small interior whose text is in the file itself. */
function facts(text: string): Reading['facts'] {
  return JSON.parse(text) as Reading['facts'];
}

// A reader whose file says what it is to do: the facts it hands over as JSON, or how it fails.
await serveReader(async (path, { step, fileName }) => {
  const bytes = readFileSync(path);
  const text = bytes.toString('utf8');
  if (text === 'go on') return goOn(step);
  if (text === 'swallow') swallow();
  if (text === 'spin') for (;;) Math.sqrt(2);
  if (text === 'throw') throw new Error('a secret detail');
  if (text === 'exit') process.exit(3);
  if (text === 'refuse') throw new Refusal('BAD_INPUT', 'This file is locked by a password.', 'file');
  step(1, 1, 'files read');
  return {
    fileName,
    bytes: bytes.byteLength,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    facts: facts(text),
    pictures: [],
  };
});
