import { parentPort, workerData } from 'node:worker_threads';
import { openApp } from '../app.ts';
import { portLine } from './port-line.ts';
import { serveStore } from './serve.ts';

if (parentPort === null) throw new Error('This file is the store’s worker thread; start src/host/start.ts.');
serveStore(portLine(parentPort, workerData.places), workerData, openApp);
