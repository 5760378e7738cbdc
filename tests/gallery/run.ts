/** `npm run gallery`: writes out/gallery and serves it on this machine. With `--write-only` it writes and ends. */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { writeGallery } from './gallery.ts';

const FOLDER = 'out/gallery';
const KINDS: Readonly<Record<string, string>> = { '.html': 'text/html; charset=utf-8', '.svg': 'image/svg+xml' };
const PORT = 4191;

const gallery = writeGallery(FOLDER);
console.log(`${gallery.file}: ${gallery.pictures.length} pictures`);

if (!process.argv.includes('--write-only')) {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent((request.url ?? '/').replace(/\?.*$/, '')));
    const name = path === '/' ? 'index.html' : path.slice(1);
    const kind = KINDS[extname(name)];
    // Only what was written, and only by its name: no way out of the folder.
    if (kind === undefined || (name !== 'index.html' && !gallery.pictures.includes(name))) {
      response.writeHead(404).end('There is no such picture.');
      return;
    }
    response.writeHead(200, { 'content-type': kind }).end(readFileSync(join(FOLDER, name)));
  });
  server.on('error', (error: Error) => {
    console.error(`The gallery cannot be served: ${error.message}. Open ${gallery.file} in a browser instead.`);
    process.exitCode = 1;
  });
  server.listen(PORT, '127.0.0.1', () => console.log(`http://127.0.0.1:${PORT}/  (Ctrl+C ends it)`));
}
