import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';

/** A worker in a file of its own, as the page's sources start it. */
const WORKER = /new Worker\(\s*new URL\('([^']+)', import\.meta\.url\),\s*(\{[^}]*\})\s*\)/g;

/** In the single file a worker comes out of the page itself: a page from the disk may load no other file. */
function inlineWorkers(): Plugin {
  return {
    name: 'oddwheel:inline-workers',
    enforce: 'pre',
    transform(code, id) {
      if (!/\/apps\/bench\/src\/.*\.tsx?$/.test(id) || !code.includes('new Worker(')) return undefined;
      const imports: string[] = [];
      const changed = code.replace(WORKER, (_, path: string, options: string) => {
        const name = `InlineWorker${imports.length}`;
        imports.push(`import ${name} from '${path}?worker&inline';`);
        return `new ${name}(${options.replace("type: 'module', ", '')})`;
      });
      if (imports.length === 0)
        this.error(`A worker in ${id} is started in a way that cannot be put into the single file.`);
      return { code: `${imports.join('')}${changed}`, map: null };
    },
  };
}

/** What gives the page out while the host is away, and the list of files that it keeps. */
function keptPage(): Plugin {
  const source = readFileSync(fileURLToPath(new URL('src/kept-page/kept-page.js', import.meta.url)), 'utf8');
  return {
    name: 'oddwheel:kept-page',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const files = Object.keys(bundle).filter((name) => name.startsWith('assets/'));
        this.emitFile({ type: 'asset', fileName: 'kept-page.js', source });
        this.emitFile({ type: 'asset', fileName: 'kept-page.json', source: JSON.stringify(files.sort()) });
      },
    },
  };
}

/** The single file can reach nothing: whatever it needs is in it. */
const POLICY = [
  "default-src 'none'",
  "script-src 'unsafe-inline' blob: data:",
  'worker-src blob: data:',
  "style-src 'unsafe-inline'",
  'img-src blob: data:',
  'font-src data:',
  'connect-src blob: data:',
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Gives the one file its policy, and puts the mark in the tab into it. */
function oneFile(): Plugin {
  const mark = readFileSync(fileURLToPath(new URL('src/face/mark.svg', import.meta.url)));
  return {
    name: 'oddwheel:one-file',
    enforce: 'post',
    transformIndexHtml: {
      order: 'pre',
      handler: (html) =>
        html
          .replace(
            '<meta charset="utf-8" />',
            (found) => `${found}\n    <meta http-equiv="Content-Security-Policy" content="${POLICY}" />`,
          )
          .replace('./src/face/mark.svg', `data:image/svg+xml;base64,${mark.toString('base64')}`),
    },
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const names = Object.values(bundle).map(({ fileName }) => fileName);
        if (names.join() !== 'oddwheel.html') this.error(`Not all is in one file: ${names.join(', ')}`);
      },
    },
  };
}

// The workspaces' TypeScript is taken as it stands; the base is relative so that any host and folder can serve the page.
// Mode `alone` makes one HTML file that opens from the disk.
export default defineConfig(({ mode }) => {
  const alone = mode === 'alone';
  return {
    root: import.meta.dirname,
    base: './',
    plugins: [
      react(),
      ...(alone ? [inlineWorkers(), viteSingleFile({ outputFileName: 'oddwheel.html' }), oneFile()] : [keptPage()]),
    ],
    resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
    worker: { format: alone ? 'iife' : 'es' },
    build: {
      outDir: alone ? 'dist-alone' : 'dist',
      emptyOutDir: true,
      target: 'es2022',
      // What draws in space comes alone and only when it is asked for; the steps come together, since the page must go on
      // without a connection.
      ...(alone ? { modulePreload: false } : { assetsInlineLimit: 0, chunkSizeWarningLimit: 700 }),
    },
  };
});
