import { defineConfig } from 'vitest/config';

// biome-ignore lint/style/noDefaultExport: the tool reads its settings from the default export
export default defineConfig({
  test: {
    include: ['{src,checks,simulation,scenarios}/**/*.test.{ts,tsx}'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
