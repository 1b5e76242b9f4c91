import { contextBridge, ipcRenderer } from 'electron';
import { makeBridge } from './bridge.ts';

contextBridge.exposeInMainWorld('editionLedger', makeBridge(ipcRenderer));
