import { useEffect } from 'react';
import { useLocation } from 'wouter';
import { announce } from '../status.ts';
import { subscribe } from '../transport.ts';
import { routeOf, SCREENS } from './screens.ts';

/** Follows the Go menu of the desktop window; a browser has no such menu. */
export function useGoMenu(): void {
  const [, navigate] = useLocation();
  useEffect(() => {
    if (!window.editionLedger) return;
    return subscribe('go', (data) => {
      const path = typeof data === 'object' && data !== null && 'path' in data ? data.path : undefined;
      const entry = SCREENS.find((one) => one.path === path);
      if (entry) navigate(routeOf(entry));
    });
  }, [navigate]);
}

const NO_CATALOGUE =
  'Only a catalogue, a file whose name ends in .ledger, can be opened by dropping it here.';
const NO_PATH =
  'A browser does not tell where a dropped file lies; start Edition Ledger with --catalogue and the file’s path.';

async function openDropped(file: File): Promise<void> {
  const bridge = window.editionLedger;
  const isCatalogue = file.name.toLowerCase().endsWith('.ledger');
  if (!isCatalogue) announce(NO_CATALOGUE, 'refused');
  else if (!bridge) announce(NO_PATH, 'refused');
  else if (!(await bridge.openDropped(file))) announce(NO_CATALOGUE, 'refused');
}

/** A file that is dropped beside any place for files: a catalogue is opened, anything else leaves the page as it is. */
export function useDroppedCatalogue(): void {
  useEffect(() => {
    const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
    const onOver = (event: DragEvent) => {
      if (hasFiles(event)) event.preventDefault();
    };
    const onDrop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      // A place for files has taken it already.
      if (event.defaultPrevented || !file) return;
      event.preventDefault();
      void openDropped(file);
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('drop', onDrop);
    };
  }, []);
}
