import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { collectLicences } from './src/host/pages/licences.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Puts the licences of all that the program carries beside the pages, which show them in Settings. */
const licences: Plugin = {
  name: 'licences',
  generateBundle() {
    const source = JSON.stringify(collectLicences(here('.')));
    this.emitFile({ type: 'asset', fileName: 'licences.json', source });
  },
};

/**
 * Builds the windows' pages. Relative addresses let the same files be served by the loopback host and
 * by the desktop's own protocol; nothing is inlined, since the content policy allows `'self'` alone.
 */
export default defineConfig({
  root: here('./renderer'),
  base: './',
  plugins: [react(), licences],
  build: {
    outDir: here('./dist/renderer'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // Screens use the word lists of src/contract/terms.ts; its schemas serve the host alone and are left out.
      treeshake: { manualPureFunctions: ['z', 'operation'] },
    },
  },
});
