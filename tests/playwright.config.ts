/**
 * Browser tests on the built site: phone (360 px) and desktop (1280 px), served from this machine.
 *
 * The browser comes inside an npm package, so nothing is downloaded and nothing is installed in the system.
 * Each test file starts from the same built pages; run `npm run build` first.
 */
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import chromium from '@sparticuz/chromium';
import { RESULTS } from './support/step.ts';

const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

export default defineConfig({
  testDir: './browser',
  testMatch: '**/*.spec.ts',
  outputDir: join(RESULTS, 'browser'),
  globalSetup: './support/serve-built-site.ts',
  fullyParallel: true,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  // Generous: a busy machine may be many times slower than a quiet one, and a late answer is not a wrong one.
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: [['dot'], ['json', { outputFile: join(RESULTS, 'browser.json') }]],
  use: {
    browserName: 'chromium',
    // A fixed language and time zone: pages must read the same on every machine.
    locale: 'en-GB',
    timezoneId: 'UTC',
    reducedMotion: 'reduce',
    launchOptions: { executablePath: await chromium.executablePath(), args },
    trace: 'off',
    screenshot: 'only-on-failure',
  },
  projects: [
    { name: 'phone', use: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } },
    { name: 'desktop', use: { viewport: { width: 1280, height: 900 } } },
  ],
});
