import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

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
  },
});
