/**
 * `npm run -s hosting -- nginx --directory /srv/second-sling`: prints a configuration of nginx for the built site.
 *
 * Options: `--directory <path>` (where `dist` was copied to; needed), `--port <number>` (default 80), `--name <name>`
 * (default: any). The folder of the site is that of the build, from BASE_PATH.
 */
import { parseArgs } from 'node:util';
import { nginxConfiguration } from '../build/steps/hosting.ts';
import { asBase } from './static-server.ts';

const USAGE = 'Write: npm run -s hosting -- nginx --directory /srv/second-sling [--port 80] [--name slings.example.org]';

try {
  const { values, positionals } = parseArgs({ allowPositionals: true, options: { directory: { type: 'string' }, port: { type: 'string', default: '80' }, name: { type: 'string', default: '_' } } });
  if (positionals.join(' ') !== 'nginx') throw new RangeError(`a configuration of "${positionals.join(' ')}" is not written here; nginx is`);
  if (values.directory === undefined) throw new RangeError('--directory is missing: the folder with the built site');
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 1 || port > 65535) throw new RangeError(`--port: a whole number from 1 to 65535 (got ${values.port})`);
  console.log(nginxConfiguration({ directory: values.directory, folder: asBase(process.env['BASE_PATH'] ?? '/'), port, name: values.name }).trimEnd());
} catch (fault) {
  console.error(`${(fault as Error).message}\n${USAGE}`);
  process.exitCode = 2;
}
