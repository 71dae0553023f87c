import type { NextConfig } from 'next';

const config: NextConfig = {
  agentRules: false,
  poweredByHeader: false,
  // Native modules, and packages that read their own files by path, are loaded from node_modules rather than bundled.
  serverExternalPackages: ['better-auth', 'highs', 'better-sqlite3', 'pdfkit', 'bwip-js'],
  // Which sources the build was made from; an issued quote names them (lib/services/quotes/made-with.ts).
  env: { KITWRIGHT_SOURCES: process.env.KITWRIGHT_SOURCES ?? 'unbuilt' },
  // The title of a screen comes with its beginning, for every browser: none is ever without one.
  htmlLimitedBots: /.*/,
  // A list of 10 MB with the form around it comes through the proxy whole.
  experimental: { proxyClientMaxBodySize: '12mb' },
  // `npm run check` proves the types of the whole project, tests included; a start need not do it again.
  typescript: { ignoreBuildErrors: true },
};

export default config;
