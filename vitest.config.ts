import { defineConfig } from 'vitest/config';

/**
 * One project a suite: the folder under tests/ names it.
 * Only `integration` gets the `react-server` condition, so that `server-only` does not throw there.
 */
const suites = [
  'unit',
  'reference',
  'external',
  'property',
  'integration',
  'documents',
  'architecture',
  'bench',
  'soak',
] as const;

const timeouts: Readonly<Partial<Record<(typeof suites)[number], number>>> = {
  external: 120_000,
  reference: 120_000,
  property: 120_000,
  integration: 60_000,
  documents: 120_000,
  architecture: 120_000,
  bench: 600_000,
  soak: 7_200_000,
};

export default defineConfig({
  test: {
    projects: suites.map((suite) => ({
      ...(suite === 'integration' ? { ssr: { resolve: { conditions: ['react-server', 'node', 'import'] } } } : {}),
      test: {
        name: suite,
        include: [`tests/${suite}/**/*.test.{ts,tsx}`],
        environment: 'node' as const,
        setupFiles: ['tests/support/quiet-console.ts'],
        testTimeout: timeouts[suite] ?? 20_000,
        hookTimeout: timeouts[suite] ?? 20_000,
        allowOnly: false,
        passWithNoTests: false,
      },
    })),
    coverage: {
      provider: 'v8',
      include: ['lib/**/*.ts'],
      reporter: ['text-summary', 'json-summary'],
      reportsDirectory: 'coverage',
    },
  },
});
