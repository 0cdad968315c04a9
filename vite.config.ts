import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Pure folders do nothing when they are loaded, so what a page does not use of them is left out of it. */
const isPure = /\/(?:data|src\/(?:units|core|dossier|papers|text|contract))\//;

/** The screens, built for the browser. Fonts and code are shipped; nothing is fetched from elsewhere. */
export default defineConfig({
  root: here('./src/ui'),
  cacheDir: here('./.cache/vite'),
  plugins: [react()],
  build: {
    outDir: here('./dist/ui'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    manifest: true,
    rolldownOptions: {
      treeshake: { moduleSideEffects: (id) => !isPure.test(id) },
    },
  },
});
