import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// The workspaces' TypeScript is taken as it stands; the base is relative so that any host and folder can serve the page.
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es' },
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
});
