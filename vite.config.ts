import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * Builds the windows' pages. Relative addresses let the same files be served by the loopback host and
 * by the desktop's own protocol; nothing is inlined, since the content policy allows `'self'` alone.
 */
export default defineConfig({
  root: here('./renderer'),
  base: './',
  plugins: [react()],
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
