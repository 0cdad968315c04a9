import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** The server and the command line as one bundle of our own code, the thread that works out forecasts as another; packages stay in `node_modules`. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: true,
    rollupOptions: {
      input: { main: 'src/main.ts', forecastThread: 'src/adapters/forecast/forecastThread.ts' },
    },
    outDir: 'dist/server',
    target: 'node20',
    sourcemap: true,
    minify: false,
    reportCompressedSize: false,
  },
  ssr: { external: [...builtinModules], noExternal: [] },
  logLevel: 'warn',
});
