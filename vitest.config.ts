import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: { conditions: ['source', 'module', 'node'] },
  ssr: { resolve: { conditions: ['source', 'module', 'node'] } },
  test: { include: ['packages/*/test/**/*.test.ts', 'tests/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
})
