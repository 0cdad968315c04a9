import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** The server and the command line as one bundle of our own code; packages stay in `node_modules`. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: 'src/main.ts',
    outDir: 'dist/server',
    target: 'node20',
    sourcemap: true,
    minify: false,
    reportCompressedSize: false,
  },
  ssr: { external: [...builtinModules], noExternal: [] },
  logLevel: 'warn',
});
