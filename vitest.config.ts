import { defineConfig } from 'vitest/config';

const patience = { testTimeout: 120_000, hookTimeout: 120_000 };

// biome-ignore lint/style/noDefaultExport: the tool reads its settings from the default export
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['{src,checks,simulation,scenarios}/**/*.test.{ts,tsx}'],
          exclude: ['checks/browser/**'],
          ...patience,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['checks/browser/**/*.test.ts'],
          globalSetup: ['checks/browser/build-app.ts'],
          // One browser at a time: two would fight for two cores, and time out.
          fileParallelism: false,
          // What is waited for comes at once on a quick machine; on a slow one it may take a while.
          expect: { poll: { timeout: 20_000, interval: 100 } },
          ...patience,
        },
      },
    ],
  },
});
