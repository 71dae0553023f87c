import { defineConfig } from '@playwright/test';

/** `npm run test:e2e` prepares the database and names the port; a story may not depend on another one's. */
const port = Number(process.env.E2E_PORT ?? 3210);

export default defineConfig({
  testDir: './tests/e2e',
  testMatch: '**/*.test.ts',
  workers: 1,
  retries: 0,
  forbidOnly: true,
  reporter: [['list'], ['json']],
  timeout: 180_000,
  // How fast a screen answers is the benchmark's question; a story waits for what it expects, on a busy machine too.
  expect: { timeout: 20_000 },
  outputDir: './test-results',
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    locale: 'en-GB',
    timezoneId: 'UTC',
    viewport: { width: 1280, height: 900 },
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--disable-dev-shm-usage',
        '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
      ],
    },
  },
  webServer: {
    command: `node --import ./lib/launch/true-address.mjs --import ./lib/launch/answer-status.mjs node_modules/next/dist/bin/next start -p ${port} -H 127.0.0.1`,
    url: `http://127.0.0.1:${port}/api/ping`,
    reuseExistingServer: false,
    timeout: 60_000,
    env: { NEXT_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
  },
});
