import { defineConfig } from 'drizzle-kit';

// Generating only: migrations are run by src/migrate.ts.
export default defineConfig({ dialect: 'postgresql', schema: './src/schema/index.ts', out: './migrations' });
