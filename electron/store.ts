import { z } from 'zod';
import { openApp } from '../src/app.ts';
import { serveStore } from '../src/thread/serve.ts';
import { cancelledBySlip } from './store-line.ts';

// Runs as Electron's utility process: the catalogue stays off the window's and the shell's own threads.
const { parentPort } = process;
const options = JSON.parse(process.argv.at(-1) ?? 'null');
const { slips } = z.object({ slips: z.string().min(1) }).parse(options);
serveStore(
  {
    post: (message) => parentPort.postMessage(message),
    onMessage: (listener) => parentPort.on('message', (event) => listener(event.data)),
    cancelled: cancelledBySlip(slips),
  },
  options,
  // Bundled, the other threads lie beside the store.
  (given) =>
    openApp({
      ...given,
      reader: { entry: new URL('./reader.js', import.meta.url) },
      backup: { entry: new URL('./backup.js', import.meta.url) },
    }),
);
