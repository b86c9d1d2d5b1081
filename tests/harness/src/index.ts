export { type BrowserProgram, findBrowsers, launchBrowser } from './browser.ts';
export { createDatabase, dropDatabase, freshName } from './databases.ts';
export { jsonText } from './json-text.ts';
export { findPostgresBinaries, type PostgresBinaries } from './postgres-binaries.ts';
export { type OwnPostgres, type RealPostgres, startOwnPostgres, startRealPostgres } from './real-postgres.ts';
