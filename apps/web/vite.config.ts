import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

/** Lays a .br and a .gz beside every text file of the build, so that the service never compresses while it serves. */
function compressed(): Plugin {
  let folder = 'dist';
  return {
    name: 'compressed',
    apply: 'build',
    configResolved({ root, build }) {
      folder = join(root, build.outDir);
    },
    closeBundle() {
      for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
        if (!entry.isFile() || !/\.(js|css|html|svg)$/.test(entry.name)) continue;
        const path = join(entry.parentPath, entry.name);
        const content = readFileSync(path);
        writeFileSync(`${path}.br`, brotliCompressSync(content));
        writeFileSync(`${path}.gz`, gzipSync(content, { level: 9 }));
      }
    },
  };
}

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  plugins: [compressed()],
  server: { port: 5180, proxy: { '/api': 'http://127.0.0.1:4180' } },
});
