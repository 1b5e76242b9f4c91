import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { makeBridge } from './bridge.ts';

contextBridge.exposeInMainWorld('editionLedger', makeBridge(ipcRenderer, webUtils));
