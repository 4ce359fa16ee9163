import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

/** The system's Chromium, whose software driver stands in for a card. */
export const CHROMIUM: string | undefined = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find(existsSync);

/** WebGPU on the software driver that Chromium brings. */
const FLAGS = ['--headless', '--no-sandbox', '--enable-unsafe-webgpu', '--use-webgpu-adapter=swiftshader'];

/** Opens a page made of one program and waits for what it posts. */
export async function postedBy(program: string, patience: number): Promise<unknown> {
  const { outputFiles } = await build({
    entryPoints: [program],
    bundle: true,
    format: 'iife',
    platform: 'browser',
    write: false,
  });
  const page = `<!doctype html><meta charset="utf-8"><script>${outputFiles[0]?.text.replaceAll('</script', '<\\/script')}</script>`;
  const folder = mkdtempSync(join(tmpdir(), 'fairflight-gpu-'));
  const server = createServer();
  let stop = async (): Promise<void> => {};
  try {
    return await new Promise((resolve, reject) => {
      server.on('request', (request, response) => {
        if (request.method !== 'POST') {
          response.setHeader('content-type', 'text/html').end(page);
          return;
        }
        let body = '';
        request.on('data', (part) => {
          body += part;
        });
        request.on('end', () => {
          response.end();
          resolve(JSON.parse(body));
        });
      });
      server.listen(0, '127.0.0.1', () => {
        const { port } = server.address() as AddressInfo;
        const browser = spawn(
          CHROMIUM ?? '',
          [...FLAGS, `--user-data-dir=${folder}`, `http://127.0.0.1:${port}/`],
          {
            stdio: 'ignore',
          },
        );
        browser.on('error', reject);
        const gone = new Promise((exited) => browser.on('exit', exited));
        const timer = setTimeout(() => reject(new Error('the browser said nothing')), patience);
        stop = async () => {
          clearTimeout(timer);
          browser.kill();
          await gone;
        };
      });
    });
  } finally {
    await stop();
    server.closeAllConnections();
    server.close();
    // Its helpers write on for a moment after the browser is gone.
    rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 });
  }
}
