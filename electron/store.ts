import { openApp } from '../src/app.ts';
import { serveStore } from '../src/thread/serve.ts';

// Runs as Electron's utility process: the catalogue stays off the window's and the shell's own threads.
const { parentPort } = process;
serveStore(
  {
    post: (message) => parentPort.postMessage(message),
    onMessage: (listener) => parentPort.on('message', (event) => listener(event.data)),
  },
  JSON.parse(process.argv.at(-1) ?? 'null'),
  openApp,
);
