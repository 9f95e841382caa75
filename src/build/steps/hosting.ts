/**
 * What a host says with each file: its type, how long it may be kept, who may show it in a frame. One table, from which come
 * the answers of `npm start`, the file `_headers` in the built site, and a configuration of nginx. The policy for scripts is
 * no part of it: that stands in each page, by hash.
 */

/** Content types of what a build writes. Anything else is sent as plain bytes. */
export const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.yaml': 'text/yaml; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
  '.ics': 'text/calendar; charset=utf-8',
  '.zip': 'application/zip',
  '.bib': 'application/x-bibtex; charset=utf-8',
  '.ris': 'application/x-research-info-systems; charset=utf-8',
};

/** Features of a device that no page here asks for, by their names in the registry of the W3C's Permissions Policy. */
const UNUSED = ['accelerometer', 'autoplay', 'camera', 'display-capture', 'geolocation', 'gyroscope', 'hid', 'magnetometer', 'microphone', 'midi', 'payment', 'serial', 'usb', 'xr-spatial-tracking'];

/** A header, and which files carry it. A path begins with a slash, below the folder of the site; `*` stands for anything. */
interface Rule {
  name: string;
  value: string;
  /** Absent: all files. */
  on?: readonly string[];
  /** Files that do not carry it although `on` is absent. */
  except?: readonly string[];
}

const RULES: readonly Rule[] = [
  { name: 'X-Content-Type-Options', value: 'nosniff' },
  // Two pages of ours read which page of ours the reader came from; nobody else learns it.
  { name: 'Referrer-Policy', value: 'same-origin' },
  { name: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { name: 'Permissions-Policy', value: UNUSED.map((feature) => `${feature}=()`).join(', ') },
  // Only pages made for it stand in a frame elsewhere.
  { name: 'Content-Security-Policy', value: "frame-ancestors 'none'", except: ['/embed/*'] },
  // Data, citations, drawings and the feed are for other programs, too.
  { name: 'Access-Control-Allow-Origin', value: '*', on: ['/data/*', '/cite/*', '/drawings/*', '/changes/*'] },
  // Their names change with what they hold.
  { name: 'Cache-Control', value: 'public, max-age=31536000, immutable', on: ['/_astro/*', '/compare/evidence-*', '/compare/then-*', '/rack/rules-*', '/search/index-*'] },
];
/** Asked again each time, since a page keeps its address: the answer is short where nothing changed. */
const OTHERWISE_KEPT = 'no-cache';

const literal = (text: string): string => text.replace(/[.+?^${}()|[\]\\]/g, '\\$&');
/** Matches what a pattern stands for. @param base folder of the site without its closing slash */
const regexOf = (pattern: string, base = ''): string => `^${literal(base)}${pattern.split('*').map(literal).join('.*')}$`;
const matches = (pattern: string, path: string): boolean => new RegExp(regexOf(pattern)).test(path);

/** Headers of a file besides its type. @param path below the folder of the site, with its slash; query left out */
export function headersOf(path: string): Record<string, string> {
  const carried = RULES.filter(({ on, except }) => (on ?? ['*']).some((pattern) => matches(pattern, path)) && !except?.some((pattern) => matches(pattern, path)));
  return { 'Cache-Control': OTHERWISE_KEPT, ...Object.fromEntries(carried.map(({ name, value }) => [name, value])) };
}

/**
 * Text of the file `_headers`, which many static hosts read: a path, and below it what is sent with it. Such hosts send
 * everything that any path grants, so no path here takes back what another says.
 * @param folder of the site, with its closing slash
 * @param rooms names of what stands at the top of the built site; of folders with a closing slash
 */
export function headersFile(folder: string, rooms: readonly string[]): string {
  const base = folder.replace(/\/$/, '');
  const paths = new Map<string, string[]>();
  for (const { name, value, on, except } of RULES) {
    // The root of the site is no room of its own.
    const all = ['/', ...rooms.map((room) => (room.endsWith('/') ? `/${room}*` : `/${room}`))];
    const patterns = on ?? (except ? all.filter((pattern) => !except.includes(pattern)) : ['/*']);
    for (const pattern of patterns) paths.set(pattern, [...(paths.get(pattern) ?? []), `  ${name}: ${value}`]);
  }
  return `${[...paths].map(([pattern, lines]) => [`${base}${pattern}`, ...lines].join('\n')).join('\n\n')}\n`;
}

/** Where nginx finds the site and where it offers it. */
export interface NginxSite {
  /** Folder with the built site. */
  directory: string;
  /** Folder of the site in its addresses, with its closing slash. */
  folder: string;
  port: number;
  /** Name that it answers to; `_` is any. */
  name: string;
}

/** A name of a header as a variable of nginx. */
const variableOf = (name: string): string => `$second_sling_${name.toLowerCase().replaceAll('-', '_')}`;

/**
 * Configuration of nginx for one site, for its context `http`. TLS, and the header that asks for it, are the host's.
 * Throws RangeError on a path or name that would need quoting.
 */
export function nginxConfiguration({ directory, folder, port, name }: NginxSite): string {
  for (const [what, text] of [['directory', directory], ['folder', folder], ['name', name]] as const) {
    if (!/^[\w./:@-]+$/.test(text)) throw new RangeError(`${what}: only letters, digits and . / : @ - _ are written into the configuration (got ${JSON.stringify(text)})`);
  }
  if (!folder.startsWith('/') || !folder.endsWith('/')) throw new RangeError(`folder: begins and closes with a slash (got ${folder})`);
  const base = folder.replace(/\/$/, '');
  const maps = [...new Set(RULES.map((rule) => rule.name))].map((header) => {
    const lines = RULES.filter((rule) => rule.name === header).flatMap(({ value, on, except }) => [
      ...(except ?? []).map((pattern) => `  "~${regexOf(pattern, base)}" "";`),
      ...(on ? on.map((pattern) => `  "~${regexOf(pattern, base)}" "${value}";`) : [`  default "${value}";`]),
    ]);
    if (header === 'Cache-Control') lines.push(`  default "${OTHERWISE_KEPT}";`);
    return `map $uri ${variableOf(header)} {\n${lines.join('\n')}\n}`;
  });
  const types = Object.entries(TYPES).map(([ending, type]) => `    ${type.replace(/;.*/, '')} ${ending.slice(1)};`);
  const texts = [...new Set(Object.values(TYPES).filter((type) => type.includes('charset')).map((type) => type.replace(/;.*/, '')))];
  const packed = [...texts.filter((type) => type !== 'text/html'), 'image/svg+xml', 'application/manifest+json'];
  return `# Second Sling behind nginx. Stands in the context "http", for example as a file of conf.d.
${maps.join('\n')}

server {
  listen ${port};
  server_name ${name};
  server_tokens off;
  absolute_redirect off;
  index index.html;
  default_type application/octet-stream;
  types {
${types.join('\n')}
  }
  charset utf-8;
  charset_types ${texts.filter((type) => type !== 'text/html').join(' ')};
  gzip on;
  gzip_vary on;
  gzip_min_length 500;
  gzip_types ${packed.join(' ')};
${[...new Set(RULES.map((rule) => rule.name))].map((header) => `  add_header ${header} ${variableOf(header)} always;`).join('\n')}
  error_page 404 ${base}/404.html;
  error_page 403 =404 ${base}/404.html;
  location ${folder} {
${base === '' ? `    root ${directory};` : `    alias ${directory.replace(/\/$/, '')}/;`}
  }
${base === '' ? '' : `  location = ${base} { return 301 ${folder}$is_args$args; }\n  location / { return 404; }\n`}}
`;
}
