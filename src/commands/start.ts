/**
 * `npm start`: builds the site (the record check runs inside the build) and serves it on this machine.
 *
 * Options: `--port <number>` (default: the first free one from 4321), `--host <name>` (default: this machine only),
 * `--no-build` to serve what the last build wrote. Nothing is fetched from the network.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { asBase, serveDirectory } from './static-server.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const FIRST_PORT = 4321;
const PORTS_TRIED = 100;

const { values } = parseArgs({
  options: {
    port: { type: 'string' },
    host: { type: 'string' },
    'no-build': { type: 'boolean', default: false },
  },
});

if (!values['no-build']) {
  const build = spawnSync(process.execPath, ['node_modules/astro/bin/astro.mjs', 'build', '--force'], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  if (build.status !== 0) {
    console.error('\nThe build failed, so nothing is served. Its faults are listed above.');
    process.exit(build.status ?? 1);
  }
}
if (!existsSync(dist)) {
  console.error('There is no built site in dist/. Run `npm start` without --no-build.');
  process.exit(1);
}

const port = values.port === undefined ? FIRST_PORT : Number(values.port);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`--port: ${values.port} is not a port number. Give a whole number from 0 to 65535.`);
  process.exit(1);
}
const { default: config } = (await import(new URL('../../astro.config.mjs', import.meta.url).href)) as { default: { base?: string } };
const site = await serveDirectory(dist, {
  port,
  base: asBase(config.base ?? '/'),
  triesAfter: values.port === undefined ? PORTS_TRIED : 0,
  ...(values.host === undefined ? {} : { host: values.host }),
});
console.log(`\nSecond Sling is at ${site.address}\nStop it with Ctrl+C.`);
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    void site.close().then(() => process.exit(0));
  });
}
