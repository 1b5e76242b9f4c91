import { processIo } from './io.ts';
import { run } from './run.ts';

process.exitCode = await run(process.argv.slice(2), processIo()).catch((error: unknown) => {
  console.error(error);
  return 2;
});
