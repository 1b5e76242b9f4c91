#!/usr/bin/env node
import { fileURLToPath } from 'node:url';
import { runWithNode } from '../host/run-with-node.js';

await runWithNode(fileURLToPath(new URL('./main.ts', import.meta.url)));
