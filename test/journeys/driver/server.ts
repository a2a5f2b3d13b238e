import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const kinds: Record<string, string> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

/** A plain host of static files that can really go away, publish another build, or lose a file. */
export interface AppServer {
  /** The app's address, under a path that is not the host's root. */
  readonly address: string;
  /** What was asked of it so far: method and address with its query, in order. */
  readonly asked: readonly string[];
  /** Serves the files of this folder from now on. */
  publish(folder: string): void;
  /** Answers 404 for files whose path ends so; an empty list mends all. */
  lose(...endings: string[]): void;
  /** Closes the port and every connection. */
  stop(): Promise<void>;
  /** Opens the same port again after `stop`. */
  comeBack(): Promise<void>;
}

/**
 * Starts a server on a free port of this machine.
 *
 * @param folder a finished build
 * @param path where the app stands on the host, with a slash at both ends
 */
export async function startServer(folder: string, path = '/field/evenfall/'): Promise<AppServer> {
  const heard: string[] = [];
  let published = folder;
  let lost: readonly string[] = [];
  let port = 0;

  const listen = () =>
    new Promise<Server>((ready, fail) => {
      const next = createServer(async (request, response) => {
        heard.push(`${request.method} ${request.url}`);
        const asked = decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname);
        const file = normalize(asked.endsWith('/') ? `${asked}index.html` : asked);
        try {
          if (!file.startsWith(path) || lost.some((ending) => file.endsWith(ending))) {
            throw new Error('not here');
          }
          const body = await readFile(join(published, file.slice(path.length)));
          response.writeHead(200, {
            'content-type': kinds[extname(file)] ?? 'application/octet-stream',
            'cache-control': 'no-cache',
          });
          response.end(body);
        } catch {
          response.writeHead(404).end();
        }
      });
      next.once('error', fail);
      next.listen(port, '127.0.0.1', () => ready(next));
    });

  let server = await listen();
  ({ port } = server.address() as AddressInfo);

  return {
    address: `http://localhost:${port}${path}`,
    asked: heard,
    publish(next) {
      published = next;
    },
    lose(...endings) {
      lost = endings;
    },
    stop: () =>
      new Promise((closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
    async comeBack() {
      server = await listen();
    },
  };
}
