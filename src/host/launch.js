import { fileURLToPath } from 'node:url';
import { runWithNode } from './run-with-node.js';

await runWithNode(fileURLToPath(new URL('./start.ts', import.meta.url)));
